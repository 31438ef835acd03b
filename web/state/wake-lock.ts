/** The part of a browser that keeps a screen from going dark. */
interface Screens {
  request(
    what: 'screen',
  ): Promise<{ release(): Promise<void>; addEventListener(type: 'release', heard: () => void): void }>;
}

type Sentinel = Awaited<ReturnType<Screens['request']>>;

/**
 * Keeps the screen on while `wanted()`; `look` again whenever that may have changed. A browser lets go by itself when
 * the page is hidden, and may refuse: then the page works as before, and the screen goes dark as it always did.
 */
export function keepAwake(screens: Screens | undefined, wanted: () => boolean): { look(): void } {
  let held: Sentinel | null = null;
  let asking = false;
  const look = async () => {
    if (!screens || asking) return;
    if (!wanted()) {
      const letGo = held;
      held = null;
      await letGo?.release().catch(() => {});
      return;
    }
    if (held) return;
    asking = true;
    const got = await screens.request('screen').catch(() => null);
    asking = false;
    if (!got) return;
    held = got;
    got.addEventListener('release', () => {
      if (held === got) held = null;
    });
    // It may have changed while the browser was asked.
    if (!wanted()) await look();
  };
  return { look: () => void look() };
}
