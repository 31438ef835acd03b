import { expect, test } from 'vitest';
import { latticeOf } from './lattice.ts';
import { reliefOf } from './relief.ts';

const size = { xMm: 600, yMm: 400 };

test('everything stands on the page', () => {
  const bumpy = (x: number, y: number) => 3 * Math.sin(x / 50) - 2 * Math.cos(y / 40);
  const { cells, widthPx, heightPx } = reliefOf(
    latticeOf(bumpy, size, 24, 16),
    { lowUm: -5, highUm: 5 },
    500,
  );
  expect(cells).toHaveLength(24 * 16);
  for (const [x, y] of cells.flatMap(({ corners }) => corners)) {
    expect(x).toBeGreaterThanOrEqual(-1e-9);
    expect(x).toBeLessThanOrEqual(widthPx + 1e-9);
    expect(y).toBeGreaterThanOrEqual(-1e-9);
    expect(y).toBeLessThanOrEqual(heightPx + 1e-9);
  }
});

test('a nearer cell is painted after what it may hide', () => {
  const { cells } = reliefOf(
    latticeOf(() => 0, size, 3, 3),
    { lowUm: 0, highUm: 1 },
    500,
  );
  const front = cells.map(({ corners }) => corners[0]![1]);
  expect(front).toEqual(front.toSorted((a, b) => a - b));
});

test('high is up, by the scale that it states; what is not known is left out', () => {
  const half = (x: number) => (x > 300 ? null : 2);
  const { cells, point, pxPerUm } = reliefOf(latticeOf(half, size, 6, 4), { lowUm: 0, highUm: 4 }, 500);
  expect(cells).toHaveLength(3 * 4);
  expect(point(0, 0, 0)[1] - point(0, 0, 3)[1]).toBeCloseTo(3 * pxPerUm, 9);
});
