import { smallInverse } from './small-inverse.ts';

/**
 * The slab problem behind the minimum-zone plane, the target and the resting plate: a plane
 * a + b·x + c·y that lies nowhere above the points and the thickness m that holds all of them over it,
 *
 *   0 ≤ h_k − a − b·x_k − c·y_k ≤ m   for every k,   least  mean·Σ(h_k − a − …)/n + most·m.
 *
 * A linear programme of four unknowns, solved exactly by exchanging one touching point at a time (the
 * dual simplex method; for the zone alone it is Stiefel's exchange for Chebyshev approximation,
 * Numerische Mathematik 1 (1959) 1–28). Each exchange looks once at every point.
 */

/** Points with x and y centred on their mean, all three scaled to about ±1. */
export interface SlabPoints {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly h: Float64Array;
}

/** What is to be small: the mean of the heights above the plane, and the most of them. */
export interface SlabWeights {
  readonly mean: number;
  readonly most: number;
}

/** A point that touches the slab: `above` on its upper side, else on its lower. */
export interface Touch {
  readonly point: number;
  readonly above: boolean;
}

/**
 * Four touching points and the slab that they fix. `multipliers` are the forces at the touches, none of
 * them negative. Row j of `weights` makes a, b, c and m out of the heights of the four points.
 */
export interface Slab {
  readonly touches: readonly Touch[];
  readonly multipliers: readonly number[];
  readonly weights: readonly (readonly number[])[];
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly m: number;
  /** How far the slab misses its own touches: only rounding, and more for touches close together. */
  readonly missesBy: number;
}

/** The slab that is best, and in how many exchanges it was found. */
export interface BestSlab extends Slab {
  readonly exchanges: number;
}

/** Of the scaled heights: a point this little outside counts as inside. */
const INSIDE = 4e-15;
/** Coefficients of an exchange, of the largest: below it is rounding. */
const NO_PIVOT = 1e-11;
/** Of the forces, which sum up to about 1: below it is none. */
const NO_FORCE = 1e-14;
/** Bland's rule ends every stall; this only bounds what rounding might do. */
const MOST_EXCHANGES = 10_000;

/** The best slab, starting from touches whose forces balance (`startFromFour`, `startAroundMiddle`). */
export function bestSlab(points: SlabPoints, aim: SlabWeights, start: readonly Touch[]): BestSlab {
  const first = slabOf(points, aim, start);
  if (first === undefined) throw new RangeError('the starting points of a slab lie on one line');
  let slab: Slab = first;
  let stalled = false;
  let exchanges = 0;
  for (; exchanges < MOST_EXCHANGES; exchanges++) {
    const entering = outsider(points, slab, stalled);
    if (entering === undefined) break;
    const leaving = leavingTouch(points, slab, entering, stalled);
    if (leaving === undefined) break;
    stalled = slab.multipliers[leaving]! <= NO_FORCE;
    const touches = slab.touches.map((touch, i) => (i === leaving ? entering : touch));
    const next = slabOf(points, aim, touches);
    if (next === undefined) break;
    slab = next;
  }
  return { ...slab, exchanges };
}

/** Row of the constraint G·(a, b, c, m) ≥ g that a touch stands for. */
function rowOf({ x, y }: SlabPoints, { point, above }: Touch): [number, number, number, number] {
  return above ? [1, x[point]!, y[point]!, 1] : [-1, -x[point]!, -y[point]!, 0];
}

function slabOf(points: SlabPoints, aim: SlabWeights, touches: readonly Touch[]): Slab | undefined {
  const inverse = smallInverse(touches.map((touch) => rowOf(points, touch)));
  if (inverse === undefined) return undefined;
  const weights = inverse.map((row) => row.map((value, i) => (touches[i]!.above ? value : -value)));
  const parameter = (j: number) =>
    weights[j]!.reduce((sum, weight, i) => sum + weight * points.h[touches[i]!.point]!, 0);
  const [a, b, c, m] = [parameter(0), parameter(1), parameter(2), parameter(3)];
  const misses = touches.map(({ point, above }) =>
    Math.abs(points.h[point]! - a - b * points.x[point]! - c * points.y[point]! - (above ? m : 0)),
  );
  return {
    touches,
    multipliers: touches.map((_, i) => Math.max(0, aim.most * inverse[3]![i]! - aim.mean * inverse[0]![i]!)),
    weights,
    a,
    b,
    c,
    m,
    missesBy: Math.max(...misses),
  };
}

/** The point furthest outside the slab; in a stall the first one outside (Bland's rule). */
function outsider({ x, y, h }: SlabPoints, slab: Slab, stalled: boolean): Touch | undefined {
  const { a, b, c, m } = slab;
  let furthest = Math.max(INSIDE, 4 * slab.missesBy);
  let point = -1;
  let above = false;
  for (let k = 0; k < h.length; k++) {
    const height = h[k]! - a - b * x[k]! - c * y[k]!;
    if (height < -furthest) {
      furthest = -height;
      point = k;
      above = false;
    } else if (height - m > furthest) {
      furthest = height - m;
      point = k;
      above = true;
    } else continue;
    if (stalled) break;
  }
  return point < 0 ? undefined : { point, above };
}

/** The touch whose force is used up first when the entering point takes load; ties by Bland's rule in a stall. */
function leavingTouch(points: SlabPoints, slab: Slab, entering: Touch, stalled: boolean): number | undefined {
  const share = sharesOf(points, slab, entering);
  const least = NO_PIVOT * Math.max(...share.map(Math.abs));
  let leaving: number | undefined;
  let smallest = Number.POSITIVE_INFINITY;
  for (let i = 0; i < share.length; i++) {
    if (share[i]! <= least) continue;
    const ratio = slab.multipliers[i]! / share[i]!;
    const tie = Math.abs(ratio - smallest) <= NO_FORCE;
    const preferred =
      leaving !== undefined &&
      (stalled ? rank(slab.touches[i]!) < rank(slab.touches[leaving]!) : share[i]! > share[leaving]!);
    if (tie ? preferred : ratio < smallest) {
      leaving = i;
      smallest = Math.min(smallest, ratio);
    }
  }
  return leaving;
}

/** The entering row as a combination of the four rows in force. */
function sharesOf(points: SlabPoints, slab: Slab, entering: Touch): number[] {
  const row = rowOf(points, entering);
  return slab.touches.map((touch, i) =>
    row.reduce((sum, value, j) => sum + value * (touch.above ? 1 : -1) * slab.weights[j]![i]!, 0),
  );
}

function rank({ point, above }: Touch): number {
  return 2 * point + (above ? 1 : 0);
}
