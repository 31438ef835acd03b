import { deviation } from '../proving/noise.ts';
import type { Sample } from './steadiness.ts';

/** What another instrument read at the very times of some readings. */
export interface Matched {
  /** Mean over those times, as it reads. */
  readonly value: number;
  /** Standard deviation over those times (n − 1); 0 for one. */
  readonly spread: number;
  /** Numbers of the first and the last of its readings that were used. */
  readonly readings: readonly [first: number, last: number];
}

/**
 * The trail of an instrument, interpolated linearly to each of `times`; null when they reach beyond what it has read:
 * nothing is extrapolated.
 * @param times monotonic clock, ms, rising, at least one
 * @param trail its readings in the order of time, with no hole in it
 */
export function matchedTo(times: readonly number[], trail: readonly Sample[]): Matched | null {
  const last = trail.findIndex(({ m }) => m >= times.at(-1)!);
  const first = trail.findLastIndex(({ m }) => m <= times[0]!);
  if (first < 0 || last < 0) return null;
  let at = first;
  const values = times.map((m) => {
    while (at < last && trail[at + 1]!.m <= m) at += 1;
    return between(trail[at]!, trail[Math.min(at + 1, last)]!, m);
  });
  return {
    value: values.reduce((sum, value) => sum + value, 0) / values.length,
    spread: values.length > 1 ? deviation(values) : 0,
    readings: [trail[first]!.seq, trail[last]!.seq],
  };
}

function between(before: Sample, after: Sample, m: number): number {
  const span = after.m - before.m;
  return span > 0 ? before.value + ((m - before.m) / span) * (after.value - before.value) : before.value;
}
