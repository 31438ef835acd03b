import { asWritten, number, shortNumber } from '../words/quantity.ts';
import { highAndLow, type Sides } from '../words/sides.ts';

/** The vertical axis of the profile: round steps, room round the band, nothing blown up out of proportion. */
export interface HeightsAxis {
  readonly minUm: number;
  readonly maxUm: number;
  readonly stepUm: number;
  readonly ticksUm: readonly number[];
}

/** The next of 1, 2, 5 × 10ⁿ that is not smaller than `least`. */
export function roundStep(least: number): number {
  const decade = 10 ** Math.floor(Math.log10(least));
  for (const digit of [1, 2, 5]) if (digit * decade >= least * (1 - 1e-9)) return digit * decade;
  return 10 * decade;
}

/** Part of the axis that stays free of the curve where words are written. */
const wordsRoom = 0.14;

/**
 * An axis that holds every value, with about `lines` steps, and with room for words on one side of them.
 *
 * Steps are round in the unit of the reader. It is never closer than eight times the largest uncertainty, so that noise doesn't look like a cliff, and
 * always shows zero.
 */
export function heightsAxis(
  valuesUm: readonly number[],
  largestUUm: number,
  lines: number,
  words: 'above' | 'below',
): HeightsAxis {
  const low = Math.min(0, ...valuesUm);
  const high = Math.max(0, ...valuesUm);
  const span = Math.max(high - low, 8 * largestUUm, 0.4);
  const middle = (high + low) / 2;
  const oneUm = asWritten().one();
  const stepUm = oneUm * roundStep((1.15 * span) / Math.max(2, lines) / oneUm);
  let from = Math.floor(Math.min(low, middle - span / 2) / stepUm - 0.1);
  let to = Math.ceil(Math.max(high, middle + span / 2) / stepUm + 0.1);
  if (to === 0) to = 1;
  if (from === 0) from = -1;
  const roomUm = () => wordsRoom * (to - from) * stepUm;
  if (words === 'above' && to * stepUm - high < roomUm()) to += 1;
  if (words === 'below' && low - from * stepUm < roomUm()) from -= 1;
  const ticksUm = Array.from({ length: to - from + 1 }, (_, k) => (from + k) * stepUm);
  return { minUm: from * stepUm, maxUm: to * stepUm, stepUm, ticksUm };
}

/** "10 high", "0", "5 low": a height without a sign, in the unit of the reader. */
export function heightLabel(heightUm: number, stepUm: number, sides: Sides = highAndLow): string {
  const oneUm = asWritten().one();
  const decimals = Math.max(0, -Math.floor(Math.log10(stepUm / oneUm) + 1e-9));
  const rounded = Number((Math.abs(heightUm) / oneUm).toFixed(decimals));
  if (rounded === 0) return '0';
  return `${number(rounded, decimals)} ${heightUm > 0 ? sides.above : sides.below}`;
}

/** How many times heights are drawn larger than lengths, to two digits, with thousands set apart. */
export function exaggeration(pxPerUm: number, pxPerMm: number): string {
  const times = (pxPerUm * 1000) / pxPerMm;
  const unit = 10 ** Math.max(0, Math.floor(Math.log10(times)) - 1);
  return shortNumber(Math.round(times / unit) * unit, 0);
}
