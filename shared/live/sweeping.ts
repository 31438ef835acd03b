import type { Sample } from './steadiness.ts';

/**
 * A continuous sweep: the tip slides on without a stop, and each station is read from the readings around the moment at
 * which it passed. That moment is a mark that somebody made there, or lies at an even pace between two marks.
 */

export type SweepBy = 'marks' | 'even';

/** Readings so long before and after the moment belong to a station, ms: the metal is averaged as far as the tip slides in that time. */
const aroundMs = 250;
/** At an even pace never more than this share of the way to the next station. */
const mostOfStep = 0.1;
/** Fewer readings tell no scatter about a straight line. */
const fewest = 3;

/** What was read at one station while the tip slid over it. */
export interface Passed {
  readonly value: number;
  /** Standard deviation about the straight line in time, so that the motion itself is no scatter (n − 2). */
  readonly spread: number;
  /** Numbers of the first and the last reading used. */
  readonly readings: readonly [first: number, last: number];
  readonly count: number;
}

/** The moments at which `stations` stations were passed at an even pace from one mark to another; monotonic ms. */
export function evenMoments(fromM: number, toM: number, stations: number): number[] {
  return Array.from({ length: stations }, (_, k) => fromM + ((toM - fromM) * k) / Math.max(1, stations - 1));
}

/** How long before and after its moment a station is read, ms, where stations lie so far apart in time. */
export function halfWidthMs(stepMs = Number.POSITIVE_INFINITY): number {
  return Math.min(aroundMs, mostOfStep * stepMs);
}

/**
 * The station that was passed at `m`, from the readings up to `halfMs` before and after it.
 * @param trail readings in the order of time with no hole in it
 * @returns `early` while readings are still to come, `thin` when there are too few, as the tip went too fast
 */
export function passedAt(trail: readonly Sample[], m: number, halfMs: number): Passed | 'early' | 'thin' {
  if ((trail.at(-1)?.m ?? Number.NEGATIVE_INFINITY) < m + halfMs) return 'early';
  const around = trail.filter((sample) => Math.abs(sample.m - m) <= halfMs);
  if (around.length < fewest) return 'thin';
  const n = around.length;
  const mean = (of: (sample: Sample) => number) => around.reduce((sum, one) => sum + of(one), 0) / n;
  const [value, middle] = [mean((one) => one.value), mean((one) => one.m)];
  const times = mean((one) => (one.m - middle) ** 2);
  const slope = times > 0 ? mean((one) => (one.m - middle) * (one.value - value)) / times : 0;
  const squares = n * mean((one) => (one.value - value - slope * (one.m - middle)) ** 2);
  return {
    value,
    spread: Math.sqrt(squares / (n - 2)),
    readings: [around[0]!.seq, around[n - 1]!.seq],
    count: n,
  };
}

/** What of a trail may still be needed for a moment at or after `m`. */
export function sinceMoment(trail: readonly Sample[], m: number): readonly Sample[] {
  const first = trail.findIndex((sample) => sample.m >= m - aroundMs);
  return first < 0 ? [] : trail.slice(first);
}
