import { type Proving, takesOf } from './proving.ts';

/**
 * Standard deviation of one reading as far as it is known, as the instrument reads: of re-seating, once that was
 * done; till then of the quiet needle. Never less than what the steps of the reading alone make (a uniform
 * distribution, step/√12).
 */
export function noiseOf(proving: Proving): number {
  const { resolution, takes } = proving;
  const seats = takesOf(proving, 'spread');
  const least = resolution / Math.sqrt(12);
  if (seats) return Math.max(least, deviation(seats.map(({ value }) => value)));
  return Math.max(least, ...takes.map(({ spread }) => spread ?? 0));
}

/** Standard deviation of a sample (n − 1). */
export function deviation(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
}
