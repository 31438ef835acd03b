import { expect, test } from 'vitest';
import { adjustedHeights, indices } from '../../tests/tools/adjusted-heights.ts';
import { lineOf } from './line.ts';
import { bulgeOf, hollowOf } from './one-sided.ts';

function oneSided(heightUm: number[]) {
  const adjusted = adjustedHeights({ xMm: heightUm.map((_, k) => 100 * k), heightUm });
  const line = lineOf(adjusted, indices(heightUm.length));
  return { hollow: hollowOf(adjusted, line), bulge: bulgeOf(adjusted, line) };
}

test('a convex line is hollow by less than nothing: its lowest station between the ends stands above', () => {
  const { hollow, bulge } = oneSided([0, 3, 8, 5, 0]);
  expect(hollow.value).toBe(-3);
  expect(bulge.value).toBe(8);
  // independent heights of 1 µm, a quarter of the way: √(1 + (3/4)² + (1/4)²)
  expect(hollow.u).toBeCloseTo(Math.sqrt(1 + 10 / 16), 12);
});

test('a dip anywhere is a hollow, however high the rest', () => {
  expect(oneSided([0, 9, 9, -2, 0]).hollow.value).toBe(2);
});

test('two stations are neither', () => {
  expect(oneSided([0, 5])).toEqual({
    hollow: { value: 0, unit: 'um', u: 0 },
    bulge: { value: 0, unit: 'um', u: 0 },
  });
});
