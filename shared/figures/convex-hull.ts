/**
 * Convex hulls of points (x, h) sorted by x, as indices from left to right (Andrew's monotone chain,
 * Information Processing Letters 9 (1979) 216–219). Of points at one x only the extreme one is kept.
 */
export function lowerHull(x: ArrayLike<number>, h: ArrayLike<number>): Int32Array {
  return hull(x, h, 1);
}

/** The upper counterpart of `lowerHull`. */
export function upperHull(x: ArrayLike<number>, h: ArrayLike<number>): Int32Array {
  return hull(x, h, -1);
}

function hull(x: ArrayLike<number>, h: ArrayLike<number>, sense: 1 | -1): Int32Array {
  const kept = new Int32Array(x.length);
  let size = 0;
  for (let k = 0; k < x.length; k++) {
    if (size > 0 && x[k] === x[kept[size - 1]!]) {
      if (sense * (h[k]! - h[kept[size - 1]!]!) >= 0) continue;
      size--;
    }
    while (size >= 2) {
      const a = kept[size - 2]!;
      const b = kept[size - 1]!;
      const turn = (x[b]! - x[a]!) * (h[k]! - h[a]!) - (h[b]! - h[a]!) * (x[k]! - x[a]!);
      if (sense * turn > 0) break;
      size--;
    }
    kept[size++] = k;
  }
  return kept.slice(0, size);
}

/** Two neighbouring vertices of a hull, as point indices; the same twice where the hull is one point. */
export type Edge = readonly [from: number, to: number];

/** The last hull edge that starts at or left of `at` and ends right of it; undefined beyond the right end. */
export function edgeToTheRight(
  x: ArrayLike<number>,
  vertices: ArrayLike<number>,
  at: number,
): Edge | undefined {
  let low = 0;
  let high = vertices.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (x[vertices[middle]!]! <= at) low = middle;
    else high = middle - 1;
  }
  return low + 1 < vertices.length ? [vertices[low]!, vertices[low + 1]!] : undefined;
}

/** The hull edge that starts left of `at` and ends at or right of it; undefined before the left end. */
export function edgeToTheLeft(
  x: ArrayLike<number>,
  vertices: ArrayLike<number>,
  at: number,
): Edge | undefined {
  let low = 0;
  let high = vertices.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (x[vertices[middle]!]! >= at) high = middle;
    else low = middle + 1;
  }
  return low > 0 ? [vertices[low - 1]!, vertices[low]!] : undefined;
}

/** Height of the hull at `at` (within its span) as weights on one or two points. */
export function hullAt(
  x: ArrayLike<number>,
  vertices: ArrayLike<number>,
  at: number,
): { stations: number[]; weights: number[] } {
  const edge = edgeToTheRight(x, vertices, at);
  if (edge === undefined) return { stations: [vertices[vertices.length - 1]!], weights: [1] };
  const [a, b] = edge;
  const t = (at - x[a]!) / (x[b]! - x[a]!);
  return t === 0 ? { stations: [a], weights: [1] } : { stations: [a, b], weights: [1 - t, t] };
}
