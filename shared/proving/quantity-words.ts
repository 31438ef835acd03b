import type { Proving } from './proving.ts';
import { unitWords } from './unit-words.ts';

type Counted = Pick<Proving, 'unit' | 'graduation'>;

/** A reading in its unit, with digits down to the first one of its uncertainty: "38 µm/m", "minus 3.2 µm". */
export function quantityWords({ unit, graduation }: Counted, counts: number, u: number): string {
  const size = (Math.abs(counts) * graduation).toFixed(decimals(u * graduation));
  return `${counts < 0 && Number(size) > 0 ? 'minus ' : ''}${size} ${unitWords(unit)}`;
}

/** "sure to 0.4 µm/m" for an expanded uncertainty, with one digit, rounded up. */
export function sureWords(counted: Counted, U: number): string {
  return `sure to ${upward(counted, U)}`;
}

/** An uncertainty or a spread in its unit, rounded up to one digit. */
export function upward({ unit, graduation }: Counted, counts: number): string {
  const size = counts * graduation;
  const places = decimals(size);
  const up = Math.ceil(size * 10 ** places - 1e-6) / 10 ** places;
  return `${up.toFixed(places)} ${unitWords(unit)}`;
}

/** Decimals that show the first digit of `u`. */
function decimals(u: number): number {
  return u > 0 ? Math.min(9, Math.max(0, -Math.floor(Math.log10(u) + 1e-9))) : 1;
}
