import type { SlabPoints, Touch } from './slab.ts';

/** Of the product of two lengths: a smaller area is none. */
const NO_AREA = 1e-12;

/**
 * Touches whose forces balance for the zone alone (mean 0): any four points of which three do not lie
 * on one line. Their one affine dependence says which side of the slab each of them is on.
 */
export function startFromFour(points: SlabPoints): Touch[] {
  const { x, y, h } = points;
  const first = argmax(h.length, (k) => x[k]! ** 2 + y[k]! ** 2);
  const second = argmax(h.length, (k) => (x[k]! - x[first]!) ** 2 + (y[k]! - y[first]!) ** 2);
  const third = argmax(h.length, (k) => Math.abs(area(points, first, second, k)));
  const fourth = argmax(h.length, (k) => (k === first || k === second || k === third ? -1 : Math.abs(h[k]!)));
  const dependence: [number, number][] = [
    [first, area(points, second, third, fourth)],
    [second, -area(points, first, third, fourth)],
    [third, area(points, first, second, fourth)],
    [fourth, -area(points, first, second, third)],
  ];
  return dependence.map(([point, force]) => ({ point, above: force > 0 }));
}

/**
 * Touches whose forces balance when the mean counts 1 and the most counts `most`: three lower points
 * round the middle, shifted by the little that the one upper point takes.
 */
export function startAroundMiddle(points: SlabPoints, most: number): Touch[] {
  const { x, y, h } = points;
  const upper = argmax(h.length, (k) => h[k]!);
  const share = most / (1 + most);
  const triangle = triangleAround(points, share * x[upper]!, share * y[upper]!);
  return [...triangle.map((point) => ({ point, above: false })), { point: upper, above: true }];
}

/** Three points with (atX, atY), which lies inside the hull of all, in their triangle. */
function triangleAround({ x, y }: SlabPoints, atX: number, atY: number): number[] {
  const size = x.length;
  const far = argmax(size, (k) => (x[k]! - atX) ** 2 + (y[k]! - atY) ** 2);
  const dx = x[far]! - atX;
  const dy = y[far]! - atY;
  const across = (k: number) => dx * (y[k]! - atY) - dy * (x[k]! - atX);
  const along = (k: number) => dx * (x[k]! - atX) + dy * (y[k]! - atY);
  const none = NO_AREA * (dx * dx + dy * dy);
  const opposite = argmax(size, (k) => (Math.abs(across(k)) <= none ? -along(k) : Number.NEGATIVE_INFINITY));
  if (along(opposite) < 0 && Math.abs(across(opposite)) <= none) {
    return [far, opposite, argmax(size, (k) => Math.abs(across(k)))];
  }
  const turned = (sense: 1 | -1) =>
    argmax(size, (k) => (sense * across(k) > none ? Math.atan2(sense * across(k), along(k)) : -1));
  return [far, turned(1), turned(-1)];
}

function area({ x, y }: SlabPoints, p: number, q: number, r: number): number {
  return (x[q]! - x[p]!) * (y[r]! - y[p]!) - (y[q]! - y[p]!) * (x[r]! - x[p]!);
}

function argmax(size: number, value: (k: number) => number): number {
  let best = 0;
  let most = Number.NEGATIVE_INFINITY;
  for (let k = 0; k < size; k++) {
    const v = value(k);
    if (v > most) {
      most = v;
      best = k;
    }
  }
  return best;
}
