import type { Combination } from './combination.ts';
import { type Edge, edgeToTheLeft, edgeToTheRight, hullAt, lowerHull, upperHull } from './convex-hull.ts';

/**
 * The pair of parallel lines of least separation along the height that holds all points.
 * `upper` and `lower` are the heights of the two lines at `at`, `slope` their common slope, all as
 * combinations of the points; the width is upper − lower.
 */
export interface LineZone {
  readonly at: number;
  readonly upper: Combination;
  readonly lower: Combination;
  readonly slope: Combination;
  readonly width: number;
}

/**
 * Exact minimum zone of a line, O(n log n), O(n) where x is sorted already. By the duality of linear
 * programmes the least separation equals the greatest vertical gap between the upper and the lower
 * convex hull, and that gap is greatest over a vertex of one of them. Where the slope is not unique
 * (the two touching points at one x) one that touches a third point is taken.
 */
export function lineMinimumZone(x: ArrayLike<number>, h: ArrayLike<number>): LineZone {
  const order = ascending(x);
  const sortedX = Float64Array.from(order, (k) => x[k]!);
  const sortedH = withoutEndLine(
    sortedX,
    Float64Array.from(order, (k) => h[k]!),
  );
  const above = upperHull(sortedX, sortedH);
  const below = lowerHull(sortedX, sortedH);

  const at = widestAt(sortedX, sortedH, above, below);
  const upper = hullAt(sortedX, above, at);
  const lower = hullAt(sortedX, below, at);
  const slope = steeper(
    sortedX,
    sortedH,
    edgeToTheRight(sortedX, above, at),
    edgeToTheLeft(sortedX, below, at),
  );
  const named = (part: { stations: number[]; weights: number[] }): Combination => ({
    stations: part.stations.map((k) => order[k]!),
    weights: part.weights,
  });
  return {
    at,
    upper: named(upper),
    lower: named(lower),
    slope: named(slope),
    width: Math.max(0, heightOf(upper, sortedH) - heightOf(lower, sortedH)),
  };
}

/** Indices that put x in ascending order. */
export function ascending(x: ArrayLike<number>): Int32Array {
  const order = Int32Array.from({ length: x.length }, (_, k) => k);
  for (let k = 1; k < x.length; k++) {
    if (x[k]! < x[k - 1]!) return order.sort((a, b) => x[a]! - x[b]! || a - b);
  }
  return order;
}

/** A tilt changes no zone but costs digits, so the line through the first and last point comes off first. */
function withoutEndLine(x: Float64Array, h: Float64Array): Float64Array {
  const last = x.length - 1;
  const span = x[last]! - x[0]!;
  if (!(span > 0)) return h;
  return h.map((value, k) => {
    const t = (x[k]! - x[0]!) / span;
    return value - h[0]! * (1 - t) - h[last]! * t;
  });
}

function widestAt(x: Float64Array, h: Float64Array, above: Int32Array, below: Int32Array): number {
  let at = x[0]!;
  let widest = Number.NEGATIVE_INFINITY;
  const consider = (vertices: Int32Array, others: Int32Array, sense: 1 | -1) => {
    let j = 0;
    for (const v of vertices) {
      while (j + 2 < others.length && x[others[j + 1]!]! <= x[v]!) j++;
      const a = others[j]!;
      const b = others[Math.min(j + 1, others.length - 1)]!;
      const t = a === b ? 0 : (x[v]! - x[a]!) / (x[b]! - x[a]!);
      const gap = sense * (h[a]! * (1 - t) + h[b]! * t - h[v]!);
      if (gap > widest) {
        widest = gap;
        at = x[v]!;
      }
    }
  };
  consider(below, above, 1);
  consider(above, below, -1);
  return at;
}

/** The steeper of the upper edge that leads on and the lower edge that led here: it holds all points. */
function steeper(x: Float64Array, h: Float64Array, ...edges: readonly (Edge | undefined)[]) {
  let best = { stations: [] as number[], weights: [] as number[] };
  let steepest = Number.NEGATIVE_INFINITY;
  for (const edge of edges) {
    if (edge === undefined) continue;
    const [a, b] = edge;
    const run = x[b]! - x[a]!;
    const slope = (h[b]! - h[a]!) / run;
    if (slope > steepest) {
      steepest = slope;
      best = { stations: [a, b], weights: [-1 / run, 1 / run] };
    }
  }
  return best;
}

function heightOf(part: { stations: number[]; weights: number[] }, h: Float64Array): number {
  return part.stations.reduce((sum, k, i) => sum + part.weights[i]! * h[k]!, 0);
}
