import { type Area, dot, largest } from './area.ts';
import { type Combination, combine, single } from './combination.ts';
import type { Line } from './line.ts';
import { lineReference, meanOf } from './line-reference.ts';
import { extremesOf, type Reference, type ReferenceKind } from './reference.ts';
import { bestSlab, type Slab, type SlabPoints, type SlabWeights } from './slab.ts';
import { startAroundMiddle, startFromFour } from './slab-start.ts';

/** The kinds of reference that a plane has; `ends` makes no sense for one. */
export type PlaneReferenceKind = Exclude<ReferenceKind, 'ends'>;

/**
 * The reference plane of an area. `leastSquares`: least Σ of squared departures along the height, equal
 * weights. `minimumZone`: midway between the two parallel planes of least separation along the height that
 * hold all stations (exact; the plane itself need not be the only one, the separation is). Stations that
 * lie on one line in plan have the reference line of that kind, stations at one place a level.
 */
export function planeReference(kind: PlaneReferenceKind, area: Area): Reference {
  if (area.extent === 'point') return level(kind, area);
  if (area.extent === 'line') return lineReference(kind, lineAlong(area));
  return kind === 'leastSquares' ? byLeastSquares(area) : zonePlane(area);
}

/** The level through the mean of all stations: nothing is taken off but what they have in common. */
export function meanLevel({ stations }: Area): Reference {
  return { stations, basis: [ones(stations)], parameters: [meanOf(stations)] };
}

/** Stations that lie on one line in plan, as that line. */
export function lineAlong(area: Area): Line {
  return { stations: area.stations, alongMm: area.uMm, heightUm: area.heightUm };
}

/** u and v are centred principal axes, so the three parameters are independent sums. */
function byLeastSquares({ stations, uMm, vMm }: Area): Reference {
  const slope = (axis: Float64Array): Combination => {
    const squares = dot(axis, axis);
    return { stations, weights: axis.map((value) => value / squares) };
  };
  return {
    stations,
    basis: [ones(stations), uMm, vMm],
    parameters: [meanOf(stations), slope(uMm), slope(vMm)],
  };
}

function zonePlane(area: Area): Reference {
  if (area.stations.length === 3) return byLeastSquares(area);
  const { slab, basis } = solveSlab(area, { mean: 0, most: 1 });
  const [a, b, c, m] = slab.weights.map((weights) => touching(area, slab, weights));
  return { stations: area.stations, basis, parameters: [combine([1, a!], [0.5, m!]), b!, c!] };
}

/**
 * The plane that lies nowhere above the stations and leaves the least above it in total; of several such
 * planes the one that leaves the least at the highest station. For stations spread over a plane.
 */
export function planeBelow(area: Area): Reference {
  const { slab, basis } = solveSlab(area, { mean: 1, most: TIE_BREAK });
  const [a, b, c] = slab.weights.map((weights) => touching(area, slab, weights));
  return { stations: area.stations, basis, parameters: [a!, b!, c!] };
}

/** So little that it decides only between planes that are equal but for rounding. */
const TIE_BREAK = 1e-9;

function solveSlab(area: Area, aim: SlabWeights): { slab: Slab; basis: Float64Array[] } {
  const points = scaled(area);
  const start = aim.mean === 0 ? startFromFour(points) : startAroundMiddle(points, aim.most);
  return { slab: bestSlab(points, aim, start), basis: [ones(area.stations), points.x, points.y] };
}

/** Places to ±1, and departures from the least-squares plane to ±1: a tilt changes nothing but costs digits. */
function scaled(area: Area): SlabPoints {
  const x = unit(area.uMm);
  const y = unit(area.vMm);
  const { heightUm } = area;
  const mean = heightUm.reduce((sum, height) => sum + height, 0) / heightUm.length;
  const centred = heightUm.map((height) => height - mean);
  const a = dot(x, centred) / dot(x, x);
  const b = dot(y, centred) / dot(y, y);
  return { x, y, h: unit(centred.map((height, i) => height - a * x[i]! - b * y[i]!)) };
}

function unit(values: Float64Array): Float64Array {
  const size = largest(values) || 1;
  return values.map((value) => value / size);
}

function touching(area: Area, slab: Slab, weights: readonly number[]): Combination {
  return { stations: slab.touches.map(({ point }) => area.stations[point]!), weights };
}

function level(kind: PlaneReferenceKind, { stations, heightUm }: Area): Reference {
  const { highest, lowest } = extremesOf(heightUm);
  const middle = combine([0.5, single(stations[highest]!)], [0.5, single(stations[lowest]!)]);
  return {
    stations,
    basis: [ones(stations)],
    parameters: [kind === 'leastSquares' ? meanOf(stations) : middle],
  };
}

function ones(stations: Int32Array): Float64Array {
  return new Float64Array(stations.length).fill(1);
}
