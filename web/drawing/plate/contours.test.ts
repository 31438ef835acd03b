import { expect, test } from 'vitest';
import { contour, joined } from './contours.ts';
import { latticeOf } from './lattice.ts';

const size = { xMm: 100, yMm: 80 };

test('on a slope a contour is one straight line across', () => {
  const pieces = contour(
    latticeOf((x) => x / 10, size, 10, 8),
    4.5,
  );
  expect(pieces).toHaveLength(16);
  for (const piece of pieces) for (const [x] of piece) expect(x).toBeCloseTo(45, 9);
});

test('round a dome it is closed: every end meets another', () => {
  const dome = (x: number, y: number) => 9 - ((x - 50) / 15) ** 2 - ((y - 40) / 15) ** 2;
  const pieces = contour(latticeOf(dome, size, 25, 20), 6);
  const ends = new Map<string, number>();
  for (const [x, y] of pieces.flat()) {
    const key = `${x.toFixed(6)} ${y.toFixed(6)}`;
    ends.set(key, (ends.get(key) ?? 0) + 1);
  }
  expect(pieces.length).toBeGreaterThan(20);
  expect([...ends.values()].every((count) => count === 2)).toBe(true);
});

test('where nothing is known nothing is drawn', () => {
  const half = (x: number) => (x > 50 ? null : x / 10);
  const pieces = contour(latticeOf(half, size, 10, 8), 4.5);
  expect(pieces).toHaveLength(16);
  expect(contour(latticeOf(half, size, 10, 8), 6)).toEqual([]);
});

test('pieces that meet become one line, whatever their order', () => {
  const dome = (x: number, y: number) => 9 - ((x - 50) / 15) ** 2 - ((y - 40) / 15) ** 2;
  const pieces = contour(latticeOf(dome, size, 25, 20), 6);
  const shuffled = pieces.map((_, k) => pieces[(7 * k) % pieces.length]!);
  const [ring, ...others] = joined(pieces.length % 7 === 0 ? pieces.toReversed() : shuffled);
  expect(others).toEqual([]);
  expect(ring).toHaveLength(pieces.length + 1);
  expect(ring!.at(-1)![0]).toBeCloseTo(ring![0]![0], 6);
  const [line, ...more] = joined(
    contour(
      latticeOf((x) => x / 10, size, 10, 8),
      4.5,
    ),
  );
  expect(more).toEqual([]);
  expect(line).toHaveLength(17);
});
