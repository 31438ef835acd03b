import type { LineFigures } from './figures/line-figures.ts';
import type { ReferenceKind } from './figures/reference.ts';

/** Results said in words of metal: HIGH and LOW, never a sign. */

/** Digits shown where nothing is known of the uncertainty. */
const DIGITS_WITHOUT_UNCERTAINTY = 1;
/** More decimals than this are not metal any more. */
const MOST_DIGITS = 3;
/** k = 2, about 95 %. */
const COVERAGE = 2;

/**
 * Decimals worth showing beside a standard uncertainty: the last one is the first that is not larger
 * than u. 0.6 gives one, 0.06 two, 3 none.
 */
export function decimalsFor(u: number): number {
  if (!(u > 0)) return DIGITS_WITHOUT_UNCERTAINTY;
  return Math.min(MOST_DIGITS, Math.max(0, Math.ceil(-Math.log10(u) - 1e-9)));
}

/** The size of a value, no sign, with as many digits as its uncertainty allows: `amount(-9.63, 0.4)` is "9.6". */
export function amount(value: number, u: number): string {
  return Math.abs(value).toFixed(decimalsFor(u));
}

/** "sure to 0.8 µm" for a standard uncertainty of 0.4 µm: what is said to a person covers about 95 %. */
export function sureTo(u: number, unit = 'µm'): string {
  const size = expanded(u);
  return size === null ? 'how sure is not known' : `sure to ${size} ${unit}`;
}

/**
 * The number in "sure to": never nought. What is smaller than the last digit is rounded up to it; null where readings
 * agree so well, or are so few, that they say nothing of their own uncertainty.
 */
export function expanded(u: number): string | null {
  if (!(u > 0)) return null;
  const decimals = decimalsFor(u);
  return Math.max(COVERAGE * u, 10 ** -decimals).toFixed(decimals);
}

/** Size and expanded uncertainty, as in "9.6 µm, sure to 0.8 µm". `u` is one standard deviation. */
export function amountSureTo(value: number, u: number, unit = 'µm'): string {
  return `${amount(value, u)} ${unit}, ${sureTo(u, unit)}`;
}

/** HIGH, LOW, or nothing to tell at the digits that are shown. */
export function side(value: number, u: number): 'HIGH' | 'LOW' | 'level' {
  if (Number(amount(value, u)) === 0) return 'level';
  return value > 0 ? 'HIGH' : 'LOW';
}

/** "F4 stands 9.6 µm LOW", or "F4 stands level, sure to 0.8 µm". Heights in µm. */
export function stationSentence(name: string, heightUm: number, uUm: number): string {
  const where = side(heightUm, uUm);
  if (where === 'level') return `${name} stands level, ${sureTo(uUm)}`;
  return `${name} stands ${amount(heightUm, uUm)} µm ${where}`;
}

/** Stations of which a line must at least be known before it has a shape. */
const fewestForShape = 3;

const referenceWords: Readonly<Record<ReferenceKind, string>> = {
  ends: 'the line through its ends',
  leastSquares: 'the least-squares line',
  minimumZone: 'the minimum zone',
};

/** What a reference line is called in a sentence. */
export function referenceWord(reference: ReferenceKind): string {
  return referenceWords[reference];
}

/**
 * "Front way 8.1 µm out of straight: hollow, F6 lowest", "Front way 4 µm out of straight: crown, F3 highest",
 * "Front way 9.6 µm out of straight: s-shaped, F2 highest, F7 lowest", "Front way straight, sure to 0.8 µm". The
 * number is the straightness against `reference`, from the highest to the lowest: no station stands that far off.
 * Through two stations there is always a straight line, which says nothing of the metal.
 */
export function lineSentence(
  name: string,
  line: Pick<LineFigures, 'straightness' | 'stations'> & { readonly shape: string },
  reference: ReferenceKind,
): string {
  if (Object.keys(line.stations).length < fewestForShape)
    return `${name}: too few readings to tell whether it is straight`;
  const { valueUm, uUm, highest, lowest } = line.straightness[reference];
  if (line.shape === 'straight') return `${name} straight, ${sureTo(uUm)}`;
  const size = `${name} ${amount(valueUm, uUm)} µm out of straight: ${line.shape}`;
  if (line.shape === 'hollow') return `${size}, ${lowest} lowest`;
  if (line.shape === 'crown') return `${size}, ${highest} highest`;
  return `${size}, ${highest} highest, ${lowest} lowest`;
}
