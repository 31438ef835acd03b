import type { AdjustedHeights } from '../adjust/adjusted.ts';
import { WayscribeError } from '../errors.ts';
import { amount, side, sureTo } from '../words.ts';
import { type Combination, combine, evaluate, single, standardUncertainty } from './combination.ts';
import { type Figures, figureOf, type Lines, spreadOf } from './figure.ts';
import type { Line } from './line.ts';
import { centredOf } from './line-reference.ts';

/** The slope across a bed at one pair of stations, µm/m; plus: the second line stands higher. */
export interface CrossSlope {
  readonly from: string;
  readonly to: string;
  /** Along the first line from its first station, mm. */
  readonly alongMm: number;
  readonly slopeUmPerM: number;
  readonly uUmPerM: number;
}

/**
 * Figures of a bed, from its first two lines, second minus first, station k facing station k:
 * `twist`: greatest minus least cross slope along the bed, µm/m;
 * `twistRate`: least-squares slope of the cross slope along the bed, µm/m per m;
 * `wind`: how far the last station of the second line stands out of the plane of the other three
 * corners, µm, plus = HIGH.
 * Throws `sheet.invalid` where there are no two lines of equally many stations.
 */
export function bedFigures(adjusted: AdjustedHeights, lines: Lines): Figures {
  const [first, second] = twoLines(lines);
  const slopes = crossSlopeCombinations(adjusted, first, second);
  const centred = centredOf(first.alongMm);
  const squares = centred.reduce((sum, x) => sum + x * x, 0);
  const rate = combine(...slopes.map((slope, k) => [(1000 * centred[k]!) / squares, slope] as const));
  const last = first.stations.length - 1;
  const wind = figureOf(
    adjusted,
    combine(
      [1, single(second.stations[last]!)],
      [-1, single(second.stations[0]!)],
      [-1, single(first.stations[last]!)],
      [1, single(first.stations[0]!)],
    ),
    'um',
  );
  return {
    figures: {
      twist: spreadOf(adjusted, slopes, 'um/m'),
      twistRate: figureOf(adjusted, rate, 'um/m per m'),
      wind,
    },
    notes: [windNote(adjusted.names[second.stations[last]!]!, wind.value, wind.u)],
  };
}

/** The cross slope at every pair of stations. */
export function crossSlopes(adjusted: AdjustedHeights, lines: Lines): CrossSlope[] {
  const [first, second] = twoLines(lines);
  return crossSlopeCombinations(adjusted, first, second).map((slope, k) => ({
    from: adjusted.names[first.stations[k]!]!,
    to: adjusted.names[second.stations[k]!]!,
    alongMm: first.alongMm[k]!,
    slopeUmPerM: evaluate(slope, adjusted.heightUm),
    uUmPerM: standardUncertainty(adjusted, slope),
  }));
}

function twoLines(lines: Lines): [Line, Line] {
  const [first, second] = Object.values(lines);
  if (first === undefined || second === undefined || first.stations.length !== second.stations.length) {
    throw new WayscribeError(
      'sheet.invalid',
      'lines',
      'a bed needs two lines of equally many stations',
      'give station k of one line opposite station k of the other',
    );
  }
  return [first, second];
}

/** (h_second − h_first)/gauge in µm/m, the gauge being the distance of the two stations in plan. */
function crossSlopeCombinations({ xMm, yMm }: AdjustedHeights, first: Line, second: Line): Combination[] {
  return Array.from(first.stations, (from, k) => {
    const to = second.stations[k]!;
    const gaugeMm = Math.hypot(xMm[to]! - xMm[from]!, yMm[to]! - yMm[from]!);
    if (!(gaugeMm > 0)) {
      throw new WayscribeError(
        'sheet.invalid',
        'lines',
        'two facing stations of a bed stand at one place',
        'give them the distance between the lines',
      );
    }
    return combine([1000 / gaugeMm, single(to)], [-1000 / gaugeMm, single(from)]);
  });
}

function windNote(corner: string, valueUm: number, uUm: number): string {
  const where = side(valueUm, uUm);
  return where === 'level'
    ? `Wind: corner ${corner} stands in the plane of the other three, ${sureTo(uUm)}.`
    : `Wind: corner ${corner} stands ${amount(valueUm, uUm)} µm ${where} of the plane of the other three, ${sureTo(uUm)}.`;
}
