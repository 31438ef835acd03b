import { deviation } from './noise.ts';

/** One stream of readings while the person moves one instrument. */
export interface WatchedStream {
  readonly id: string;
  /** Readings since the watch began, all in one unit. */
  readonly values: readonly number[];
  /** What its noise leaves when nothing moves, in that unit: one standard deviation. */
  readonly quiet: number;
}

export type Moved =
  | { readonly is: 'none' }
  | { readonly is: 'one'; readonly id: string }
  /** More than one moved: a bump of the bench, or both on one surface. */
  | { readonly is: 'several'; readonly ids: readonly string[] };

/** A stream has moved when it went this many times further than its noise. */
const clear = 30;
/** Another one that went less than this share as far, each against its own noise, was only shaken. */
const shaken = 0.2;

/** Which stream moved, each judged against its own noise. */
export function whichMoved(streams: readonly WatchedStream[]): Moved {
  const went = streams
    .map(({ id, values, quiet }) => ({ id, far: values.length > 1 ? reach(values) / quiet : 0 }))
    .filter(({ far }) => far > clear)
    .sort((a, b) => b.far - a.far);
  const [first] = went;
  if (!first) return { is: 'none' };
  const ids = went.filter(({ far }) => far > shaken * first.far).map(({ id }) => id);
  return ids.length === 1 ? { is: 'one', id: first.id } : { is: 'several', ids };
}

function reach(values: readonly number[]): number {
  let [low, high] = [values[0]!, values[0]!];
  for (const value of values) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  return high - low;
}

/** Readings in a row that tell how quiet a stream is at rest. */
const row = 8;
/** The quietest row of many is quieter than most: at rest a spread stays below this many times that. */
const atRest = 4;

/**
 * Largest spread that a stream has at rest, judged by the quietest stretch of it, never below its smallest step;
 * null while there are too few readings.
 */
export function quietOf(values: readonly number[], resolution: number): number | null {
  if (values.length < row) return null;
  const spreads = values.slice(row - 1).map((_, k) => deviation(values.slice(k, k + row)));
  return Math.max(resolution, atRest * Math.min(...spreads));
}
