import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { adjustedHeights } from '../../tests/tools/adjusted-heights.ts';
import { expectClose } from '../../tests/tools/expect-close.ts';
import { bedFigures } from './bed.ts';
import { cornerPlane, leansOf } from './corner-plane.ts';
import { lineOf } from './line.ts';
import { departuresFrom } from './reference.ts';

/** Constructed: four stations on each of two ways, 100 mm apart, gauge 300 mm. */
const along = [0, 100, 200, 300];
const bed = (heightUm: readonly number[]) =>
  adjustedHeights({ xMm: [...along, ...along], yMm: [0, 0, 0, 0, 300, 300, 300, 300], heightUm });
const [front, rear] = [
  [0, 1, 2, 3],
  [4, 5, 6, 7],
];
const over = (heightUm: readonly number[]) =>
  departuresFrom(bed(heightUm), cornerPlane(bed(heightUm), { stations: front! }, { stations: rear! }));

describe('the plane through three corners of a bed', () => {
  test('holds its three corners, without any uncertainty of their own', () => {
    const { heightUm, uUm } = over([5, 1, 2, 8, -3, 0, 4, 9]);
    expectClose([heightUm[0]!, heightUm[3]!, heightUm[4]!], [0, 0, 0], 12);
    expectClose([uUm[0]!, uUm[3]!, uUm[4]!], [0, 0, 0], 12);
  });

  test('shows the wind, and its uncertainty, in the fourth corner', () => {
    const heights = [5, 1, 2, 8, -3, 0, 4, 9];
    const adjusted = bed(heights);
    const { wind } = bedFigures(adjusted, {
      front: lineOf(adjusted, front!),
      rear: lineOf(adjusted, rear!),
    }).figures;
    const { heightUm, uUm } = over(heights);
    expect(heightUm[7]).toBeCloseTo(wind!.value, 12);
    expect(uUm[7]).toBeCloseTo(wind!.u, 12);
  });

  test('does not care how the bed lies', () => {
    const height = fc.double({ min: -50, max: 50, noNaN: true });
    fc.assert(
      fc.property(fc.array(height, { minLength: 8, maxLength: 8 }), height, height, height, (h, a, b, c) => {
        const laid = h.map((value, k) => value + a + (b * along[k % 4]!) / 100 + (k > 3 ? c : 0));
        expectClose([...over(laid).heightUm], [...over(h).heightUm], 9);
      }),
    );
  });
});

test('a lean is how the slope across has changed since the first pair', () => {
  const leans = leansOf(bed([0, 0, 0, 0, 3, 3, 6, 0]), [
    [0, 4],
    [2, 6],
    [3, 7],
  ]);
  expectClose(
    leans.map(({ slopeUmPerM }) => slopeUmPerM),
    [0, 10, -10],
    9,
  );
  // Four independent heights of 1 µm over a gauge of 300 mm.
  expectClose(
    leans.map(({ uUmPerM }) => uUmPerM),
    [0, (2 / 300) * 1000, (2 / 300) * 1000],
    9,
  );
  expect(leans.map(({ from, to, xMm }) => [from, to, xMm])).toEqual([
    ['F0', 'F4', 0],
    ['F2', 'F6', 200],
    ['F3', 'F7', 300],
  ]);
  expect(leansOf(bed([0, 0, 0, 0, 3, 3, 6, 0]), [])).toEqual([]);
});
