import { lastNotBeyond } from '../../shared/replay/search.ts';
import type { Page } from './page.ts';
import { advance, msAt, type Replay } from './replay.ts';
import { replaying } from './replaying.ts';

/** Keeps a replay going while it plays: in its own time, times its speed. */
export function runReplays(page: Page): void {
  let running = false;
  /** Where the clock stands, ms into the recording, and for which replay that is true. */
  let atMs = 0;
  let stands: Replay | null = null;
  let before = 0;

  const tick = (now: number) => {
    const { replay } = page.store.get();
    if (!replay?.playing) {
      running = false;
      return;
    }
    if (replay.place !== stands?.place || replay.playback !== stands.playback) {
      atMs = msAt(replay, replay.place);
    }
    atMs += Math.min(now - before, 500) * replay.speed;
    before = now;
    const place = lastNotBeyond(replay.playback.recorded.atMs, atMs);
    page.turn((state) => replaying(state, (known) => advance(known, place)));
    stands = page.store.get().replay;
    requestAnimationFrame(tick);
  };

  page.store.watch(() => {
    const { replay } = page.store.get();
    if (!replay?.playing || running) return;
    running = true;
    stands = null;
    before = performance.now();
    requestAnimationFrame(tick);
  });
}
