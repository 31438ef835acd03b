import type { Steadiness } from '../session/events.ts';

/**
 * Limits of steadiness, in the unit in which the instrument reads. They come from the instrument:
 * what its noise leaves when nothing moves.
 */
export interface SteadyLimits {
  /** How long the reading must have been quiet, ms. */
  readonly windowMs: number;
  /** Fewest readings in the window. */
  readonly fewest: number;
  /** Largest standard deviation of the window that still counts as steady. */
  readonly spread: number;
  /** Largest change over the window, by the least-squares slope, that still counts as steady. */
  readonly trend: number;
  /** Spread or trend this many times over its limit counts as moving, not as settling. */
  readonly movingFactor: number;
}

export interface Sample {
  readonly seq: number;
  /** Monotonic clock, ms. */
  readonly m: number;
  readonly value: number;
}

/** The rolling window and what it says. Plain data, never changed in place. */
export interface Window {
  readonly samples: readonly Sample[];
  readonly steadiness: Steadiness;
  readonly mean: number | null;
  /** Standard deviation of the window (n − 1). */
  readonly spread: number | null;
  /** Least-squares change over the window, in the unit of the reading. */
  readonly trend: number | null;
  /** Since when it has been steady, monotonic ms; null when it is not. */
  readonly steadySince: number | null;
}

export const emptyWindow: Window = {
  samples: [],
  steadiness: 'moving',
  mean: null,
  spread: null,
  trend: null,
  steadySince: null,
};

/** Share of the window that its samples must span before it is full. */
export const leastSpan = 0.9;

/** The window of a reading that was asked for by itself: nothing tells how steady it was. */
export function alone(sample: Sample): Window {
  const { value, m } = sample;
  return {
    samples: [sample],
    steadiness: 'steady',
    mean: value,
    spread: null,
    trend: null,
    steadySince: m,
  };
}

/**
 * The window after one more sample.
 *
 * Steady needs a full window (at least `fewest` samples that span 0.9 of `windowMs`) whose spread and trend are
 * both under their limits. A hole longer than a whole window empties it: what was before says nothing.
 */
export function observe(window: Window, sample: Sample, limits: SteadyLimits): Window {
  return observeAll(window, [sample], limits);
}

/** The window after one or more samples that arrived together, judged once, after the last of them. */
export function observeAll(window: Window, arrived: readonly Sample[], limits: SteadyLimits): Window {
  const { windowMs, fewest, movingFactor } = limits;
  const all = [...window.samples, ...arrived];
  const now = all.at(-1)!.m;
  const known = window.samples.length;
  // The first sample that is young enough, and not before a hole among those that are new.
  let first = all.findIndex(({ m }) => now - m <= windowMs);
  let hole = false;
  for (let k = Math.max(1, known); k < all.length; k += 1) {
    if (all[k]!.m - all[k - 1]!.m <= windowMs) continue;
    first = Math.max(first, k);
    hole = true;
  }
  const samples = all.slice(first);
  const { mean, spread, trend } = describe(samples);
  const span = now - samples[0]!.m;
  const full = samples.length >= fewest && span >= leastSpan * windowMs;
  const excess = Math.max(spread / limits.spread, Math.abs(trend) / limits.trend);
  const steadiness: Steadiness =
    excess > movingFactor ? 'moving' : full && excess <= 1 ? 'steady' : 'settling';
  const steadySince = steadiness === 'steady' ? (hole ? now : (window.steadySince ?? now)) : null;
  return { samples, steadiness, mean, spread, trend, steadySince };
}

function describe(samples: readonly Sample[]): { mean: number; spread: number; trend: number } {
  const n = samples.length;
  const mean = samples.reduce((sum, { value }) => sum + value, 0) / n;
  const middle = samples.reduce((sum, { m }) => sum + m, 0) / n;
  let squares = 0;
  let products = 0;
  let times = 0;
  for (const { m, value } of samples) {
    squares += (value - mean) ** 2;
    products += (m - middle) * (value - mean);
    times += (m - middle) ** 2;
  }
  const span = samples[n - 1]!.m - samples[0]!.m;
  return {
    mean,
    spread: n > 1 ? Math.sqrt(squares / (n - 1)) : 0,
    trend: times > 0 ? (products / times) * span : 0,
  };
}
