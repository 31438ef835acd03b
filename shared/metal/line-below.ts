import { type Edge, edgeToTheLeft, edgeToTheRight, lowerHull, upperHull } from '../figures/convex-hull.ts';
import { ascending } from '../figures/line-minimum-zone.ts';

/** A straight line through point `through` with the slope of the connection `from` → `to`. */
export interface TangentLine {
  readonly through: number;
  readonly slope: Edge;
}

/** Of the span: nearer than this to a vertex, the middle is over the vertex. */
const SAME_PLACE = 1e-12;

/**
 * The line that lies nowhere above the points and leaves the least above it in total. Maximising its
 * height over the mean of x makes it the facet of the lower convex hull there. Where the mean falls on a
 * vertex (any hollow with its middle station in the middle) every tangent there leaves equally much in
 * total; of those the one that leaves the least at the highest point is taken, which is the tangent
 * nearest to the upper facet over the middle.
 */
export function lineBelow(x: ArrayLike<number>, h: ArrayLike<number>): TangentLine {
  const order = ascending(x);
  const sortedX = Float64Array.from(order, (k) => x[k]!);
  const sortedH = Float64Array.from(order, (k) => h[k]!);
  const named = ([from, to]: Edge): Edge => [order[from]!, order[to]!];
  const lower = lowerHull(sortedX, sortedH);
  const mean = sortedX.reduce((sum, value) => sum + value / sortedX.length, 0);
  const span = sortedX.at(-1)! - sortedX[0]!;
  const vertex = lower.find((v) => Math.abs(sortedX[v]! - mean) <= SAME_PLACE * span);
  if (vertex === undefined) {
    const facet = edgeToTheRight(sortedX, lower, mean)!;
    return { through: order[facet[0]]!, slope: named(facet) };
  }
  const slopeOf = ([from, to]: Edge) => (sortedH[to]! - sortedH[from]!) / (sortedX[to]! - sortedX[from]!);
  const at = sortedX[vertex]!;
  const flattest = edgeToTheLeft(sortedX, lower, at)!;
  const steepest = edgeToTheRight(sortedX, lower, at)!;
  const wanted = edgeToTheRight(sortedX, upperHull(sortedX, sortedH), at)!;
  const slope = [flattest, wanted, steepest].sort((a, b) => slopeOf(a) - slopeOf(b))[1]!;
  return { through: order[vertex]!, slope: named(slope) };
}
