import { expect, test } from 'vitest';
import { bestSlab, type SlabPoints } from './slab.ts';
import { startAroundMiddle, startFromFour } from './slab-start.ts';

/** A fine grid over ±1 with heights of about ±1. */
function grid(size: number, height: (x: number, y: number) => number): SlabPoints {
  const places = Array.from({ length: size * size }, (_, k) => [
    (2 * (k % size)) / (size - 1) - 1,
    (2 * Math.floor(k / size)) / (size - 1) - 1,
  ]);
  return {
    x: Float64Array.from(places, ([x]) => x!),
    y: Float64Array.from(places, ([, y]) => y!),
    h: Float64Array.from(places, ([x, y]) => height(x!, y!)),
  };
}

// Touching points close together fix the slab badly; what they miss by must not count as outside.
test('a smooth saddle, where the touches crowd, is settled in a few exchanges', () => {
  const points = grid(316, (x, y) => (x * x) / 2 - y * y);
  for (const aim of [
    { mean: 0, most: 1 },
    { mean: 1, most: 1e-9 },
  ]) {
    const start = aim.mean === 0 ? startFromFour(points) : startAroundMiddle(points, aim.most);
    const slab = bestSlab(points, aim, start);
    expect(slab.exchanges).toBeLessThan(60);
    expect(slab.multipliers.every((force) => force >= 0)).toBe(true);
  }
});

test('a bowl: exact slab, forces in balance', () => {
  const points = grid(21, (x, y) => (x * x + y * y) / 2);
  const slab = bestSlab(points, { mean: 0, most: 1 }, startFromFour(points));
  expect(slab.m).toBeCloseTo(1, 12);
  const force = (above: boolean) =>
    slab.touches.reduce((sum, touch, i) => sum + (touch.above === above ? slab.multipliers[i]! : 0), 0);
  expect(force(true)).toBeCloseTo(1, 12);
  expect(force(false)).toBeCloseTo(1, 12);
});

test('starting points on one line are a mistake of the caller', () => {
  const points = grid(3, () => 0);
  const line = [0, 1, 2, 0].map((point, i) => ({ point, above: i > 1 }));
  expect(() => bestSlab(points, { mean: 0, most: 1 }, line)).toThrow(RangeError);
});
