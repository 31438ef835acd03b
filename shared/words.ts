import type { LineFigures } from './figures/line-figures.ts';
import type { ReferenceKind } from './figures/reference.ts';
import { decimalsFor, metric } from './writing.ts';

export { decimalsFor };

/** Results said in words of metal: HIGH and LOW, never a sign. */

/** The size of a value, no sign, with as many digits as its uncertainty allows: `amount(-9.63, 0.4)` is "9.6". */
export function amount(value: number, u: number): string {
  return metric.digits(value, u);
}

/** "sure to 0.8 µm" for a standard uncertainty of 0.4 µm: what is said to a person covers about 95 %. */
export function sureTo(u: number, unit = 'µm'): string {
  return metric.sureTo(u, unit);
}

/** The number in "sure to", in µm; null where nobody knows how sure it is. */
export function expanded(u: number): string | null {
  return metric.expanded(u);
}

/** Size and expanded uncertainty, as in "9.6 µm, sure to 0.8 µm". `u` is one standard deviation. */
export function amountSureTo(value: number, u: number, unit = 'µm', writing = metric): string {
  return `${writing.size(value, u, unit)}, ${writing.sureTo(u, unit)}`;
}

/** HIGH, LOW, or nothing to tell at the digits that are shown. */
export function side(value: number, u: number, writing = metric): 'HIGH' | 'LOW' | 'level' {
  if (writing.isNone(value, u)) return 'level';
  return value > 0 ? 'HIGH' : 'LOW';
}

/** "F4 stands 9.6 µm LOW", or "F4 stands level, sure to 0.8 µm". Heights in µm. */
export function stationSentence(name: string, heightUm: number, uUm: number, writing = metric): string {
  const where = side(heightUm, uUm, writing);
  if (where === 'level') return `${name} stands level, ${writing.sureTo(uUm)}`;
  return `${name} stands ${writing.size(heightUm, uUm)} ${where}`;
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
  writing = metric,
): string {
  if (Object.keys(line.stations).length < fewestForShape)
    return `${name}: too few readings to tell whether it is straight`;
  const { valueUm, uUm, highest, lowest } = line.straightness[reference];
  if (line.shape === 'straight') return `${name} straight, ${writing.sureTo(uUm)}`;
  const size = `${name} ${writing.size(valueUm, uUm)} out of straight: ${line.shape}`;
  if (line.shape === 'hollow') return `${size}, ${lowest} lowest`;
  if (line.shape === 'crown') return `${size}, ${highest} highest`;
  return `${size}, ${highest} highest, ${lowest} lowest`;
}
