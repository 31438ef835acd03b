import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { adjust } from '../adjust/adjust.ts';
import { validateSheet } from '../sheet/sheet.ts';
import { biteBetween } from './bite.ts';

const names = Array.from({ length: 9 }, (_, k) => `F${k}`);

/** A way walked with a perfect level, lying at any slope. */
function walked(heightUm: readonly number[], tilt = 0, sigma = 1) {
  return adjust(
    validateSheet({
      sheet: 1,
      kind: 'way',
      stations: Object.fromEntries(names.map((name, k) => [name, [200 * k, 0]])),
      lines: { way: names },
      walks: [
        {
          id: 'w',
          sigma,
          readings: names
            .slice(1)
            .map((name, k) => [names[k], name, tilt + (heightUm[k + 1]! - heightUm[k]!) / 0.2]),
        },
      ],
    }),
  ).heights;
}

const shape = [0, -8, -17, -21, -16, -9, -4, 1, 0];
const passes = [['F0'], ['F0', 'F8'], ['F0', 'F1', 'F7', 'F8']];
const counts = [3, 1, 0, 0, 0, 0, 0, 1, 2];

describe('the bite', () => {
  test('is found exactly from perfect readings, however each survey lay', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 20, noNaN: true }),
        fc.double({ min: -500, max: 500, noNaN: true }),
        (biteUm, tilt) => {
          const after = shape.map((height, k) => height - biteUm * counts[k]!);
          const bite = biteBetween(walked(shape), walked(after, tilt), passes)!;
          expect(bite.biteUm).toBeCloseTo(biteUm, 6);
          expect(bite.scatterUm).toBeLessThan(1e-6);
          expect(bite.stations.F0!.takenUm).toBeCloseTo(3 * biteUm, 6);
        },
      ),
    );
  });

  test('carries the uncertainty of both surveys', () => {
    const after = shape.map((height, k) => height - 5 * counts[k]!);
    const fine = biteBetween(walked(shape, 0, 1), walked(after, 0, 1), passes)!;
    const coarse = biteBetween(walked(shape, 0, 3), walked(after, 0, 3), passes)!;
    expect(fine.uUm).toBeGreaterThan(0);
    expect(coarse.uUm / fine.uUm).toBeCloseTo(3, 6);
  });

  test.each([
    ['the same everywhere', [names]],
    ['rising evenly along the way', names.slice(1).map((_, k) => names.slice(k + 1))],
    ['none', []],
  ])('cannot be told from passes that are %s', (_, taken) => {
    expect(biteBetween(walked(shape), walked(shape), taken)).toBeNull();
  });
});
