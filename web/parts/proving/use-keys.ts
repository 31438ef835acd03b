import { useLayoutEffect, useRef } from 'preact/hooks';

/** What keys do while this part is on the sheet, by `KeyboardEvent.key` in lower case. */
export type Keys = Readonly<Record<string, () => void>>;

/** Listens to keys; a field keeps what is typed into it, and a focused control its own Enter and Space. */
export function useKeys(keys: Keys): void {
  const latest = useRef(keys);
  latest.current = keys;
  // Before the sheet is seen: a key pressed at once must not be lost.
  useLayoutEffect(() => {
    const listen = (event: KeyboardEvent) => {
      const { target, repeat, ctrlKey, metaKey, altKey } = event;
      if (repeat || ctrlKey || metaKey || altKey || !(target instanceof HTMLElement)) return;
      if (target.matches('input, select, textarea')) return;
      if (target.matches('button, summary') && (event.key === 'Enter' || event.key === ' ')) return;
      const act = latest.current[event.key.toLowerCase()];
      if (!act) return;
      event.preventDefault();
      act();
    };
    addEventListener('keydown', listen);
    return () => removeEventListener('keydown', listen);
  }, []);
}

/** The first nine of a list under the keys 1 to 9. */
export function numbered<T>(list: readonly T[], act: (item: T) => void): Keys {
  return Object.fromEntries(list.slice(0, 9).map((item, k) => [String(k + 1), () => act(item)]));
}
