import type { Combination } from './combination.ts';
import { combine, single } from './combination.ts';
import type { Line } from './line.ts';
import { lineMinimumZone } from './line-minimum-zone.ts';
import type { Reference, ReferenceKind } from './reference.ts';

/**
 * The reference line of a line of stations. `ends`: through the first and the last station.
 * `leastSquares`: least Σ of squared departures along the height, equal weights, by centred sums.
 * `minimumZone`: midway between the two parallel lines of least separation that hold all stations.
 */
export function lineReference(kind: ReferenceKind, line: Line): Reference {
  if (kind === 'ends') return throughEnds(line);
  return kind === 'leastSquares' ? byLeastSquares(line) : byMinimumZone(line);
}

function throughEnds(line: Line): Reference {
  const { alongMm, stations } = line;
  const last = stations.length - 1;
  const length = alongMm[last]! - alongMm[0]!;
  const toLast = alongMm.map((x) => (x - alongMm[0]!) / length);
  return {
    stations,
    basis: [toLast.map((t) => 1 - t), toLast],
    parameters: [single(stations[0]!), single(stations[last]!)],
  };
}

function byLeastSquares(line: Line): Reference {
  const { stations } = line;
  const centred = centredOf(line.alongMm);
  return {
    stations,
    basis: [new Float64Array(stations.length).fill(1), centred],
    parameters: [meanOf(stations), leastSquaresSlope(line)],
  };
}

/** The least-squares slope of a line, µm per mm, as a combination of heights. */
export function leastSquaresSlope(line: Line): Combination {
  const centred = centredOf(line.alongMm);
  const squares = centred.reduce((sum, x) => sum + x * x, 0);
  return { stations: line.stations, weights: centred.map((x) => x / squares) };
}

function byMinimumZone(line: Line): Reference {
  const zone = lineMinimumZone(line.alongMm, line.heightUm);
  const named = (part: Combination): Combination => ({
    stations: Array.from(part.stations, (k) => line.stations[k]!),
    weights: part.weights,
  });
  return {
    stations: line.stations,
    basis: [new Float64Array(line.stations.length).fill(1), line.alongMm.map((x) => x - zone.at)],
    parameters: [combine([0.5, named(zone.upper)], [0.5, named(zone.lower)]), named(zone.slope)],
  };
}

/** The mean height as a combination. */
export function meanOf(stations: ArrayLike<number>): Combination {
  return { stations, weights: new Float64Array(stations.length).fill(1 / stations.length) };
}

/** Values minus their mean. */
export function centredOf(values: Float64Array): Float64Array {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return values.map((value) => value - mean);
}
