/** A wait longer than this is shortened to it: nobody wants to watch a lunch break. */
export const longestWaitMs = 4000;

/** When an event happened, and whether the monotonic clock began anew with it. */
export interface Happened {
  readonly t: number;
  readonly m: number;
  readonly type: string;
}

/**
 * How long it really was from one event to the next, ms, by the monotonic clock; across a restart of the daemon,
 * where that clock starts anew, by the wall clock.
 */
export function waitBetween(before: Happened, now: Happened): number {
  const wait = now.type === 'resumed' || now.m < before.m ? now.t - before.t : now.m - before.m;
  return Math.max(0, wait);
}
