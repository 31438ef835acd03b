import type { AdjustedHeights } from '../adjust/adjusted.ts';

/**
 * Stations spread over an area: indices into the adjusted heights, heights in µm, and their places in
 * centred principal axes, mm: `uMm` along the longer extent, `vMm` across it. `extent` says whether they
 * spread over a plane, lie on one line in plan, or stand at one place.
 */
export interface Area {
  readonly stations: Int32Array;
  readonly uMm: Float64Array;
  readonly vMm: Float64Array;
  readonly heightUm: Float64Array;
  readonly extent: 'plane' | 'line' | 'point';
}

/** Of the length: a smaller width is none. */
const NO_WIDTH = 1e-9;

/** The area of the stations given, or of all. */
export function areaOf(adjusted: AdjustedHeights, stations?: ArrayLike<number>): Area {
  const indices = stations ? Int32Array.from(stations) : everyStation(adjusted.names.length);
  const x = centred(at(adjusted.xMm, indices));
  const y = centred(at(adjusted.yMm, indices));
  const turn = 0.5 * Math.atan2(2 * dot(x, y), dot(x, x) - dot(y, y));
  const cos = Math.cos(turn);
  const sin = Math.sin(turn);
  const uMm = centred(x.map((value, i) => cos * value + sin * y[i]!));
  const vMm = centred(x.map((value, i) => cos * y[i]! - sin * value));
  const length = largest(uMm);
  const width = largest(vMm);
  const extent = length === 0 ? 'point' : width <= NO_WIDTH * length ? 'line' : 'plane';
  return {
    stations: indices,
    uMm,
    vMm,
    heightUm: at(adjusted.heightUm, indices),
    extent,
  };
}

function everyStation(size: number): Int32Array {
  const indices = new Int32Array(size);
  for (let k = 0; k < size; k++) indices[k] = k;
  return indices;
}

/** The values of the stations named by their indices. */
export function at(values: Float64Array, stations: ArrayLike<number>): Float64Array {
  const picked = new Float64Array(stations.length);
  for (let i = 0; i < picked.length; i++) picked[i] = values[stations[i]!]!;
  return picked;
}

/** Greatest absolute value. */
export function largest(values: ArrayLike<number>): number {
  let most = 0;
  for (let i = 0; i < values.length; i++) most = Math.max(most, Math.abs(values[i]!));
  return most;
}

/** Σ p·q. */
export function dot(p: Float64Array, q: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < p.length; i++) sum += p[i]! * q[i]!;
  return sum;
}

function centred(values: Float64Array): Float64Array {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return values.map((value) => value - mean);
}
