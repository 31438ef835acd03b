import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Random, random } from '../../tests/tools/random.ts';
import { adjust } from '../adjust/adjust.ts';
import { validateSheet } from '../sheet/sheet.ts';
import { biteBetween } from './bite.ts';

const names = Array.from({ length: 9 }, (_, k) => `F${k}`);

/** A way walked with a level that is perfect, or has chance in its readings, lying at any slope. */
function walked(heightUm: readonly number[], tilt = 0, sigma = 1, chance?: Random) {
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
          readings: names.slice(1).map((name, k) => {
            const slope = tilt + (heightUm[k + 1]! - heightUm[k]!) / 0.2;
            return [names[k], name, slope + (chance ? sigma * chance.normal() : 0)];
          }),
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
          expect(bite.unevenUm).toBeLessThan(0.2 * biteUm);
          expect(bite.stations.F0!.takenUm).toBeCloseTo(3 * biteUm, 6);
        },
      ),
    );
  });

  test('carries the uncertainty of both surveys, beside that of the hand', () => {
    const after = shape.map((height, k) => height - 5 * counts[k]!);
    const variance = (sigma: number) =>
      biteBetween(walked(shape, 0, sigma), walked(after, 0, sigma), passes)!.uUm ** 2;
    const ofSurveys = (variance(2) - variance(1)) / 3;
    expect(ofSurveys).toBeGreaterThan(0);
    expect(variance(3) - variance(1)).toBeCloseTo(8 * ofSurveys, 9);
    expect(variance(1)).toBeGreaterThan(ofSurveys);
  });

  test.each([
    ['the same everywhere', [names]],
    ['rising evenly along the way', names.slice(1).map((_, k) => names.slice(k + 1))],
    ['none', []],
  ])('cannot be told from passes that are %s', (_, taken) => {
    expect(biteBetween(walked(shape), walked(shape), taken)).toBeNull();
  });

  test.each([0.05, 0.15, 0.25])(
    'lies within twice its stated uncertainty in 95 of 100 rebuilds, hand uneven by %s of its bite',
    (uneven) => {
      const chance = random(20_260_302);
      const rounds = 400;
      let held = 0;
      let squares = 0;
      for (let k = 0; k < rounds; k += 1) {
        const after = shape.map((height, i) => {
          const taken = Array.from({ length: counts[i]! }, () => 5 * (1 + uneven * chance.normal()));
          return height - taken.reduce((sum, bite) => sum + bite, 0);
        });
        const bite = biteBetween(walked(shape, 0, 1, chance), walked(after, 40, 1, chance), passes)!;
        const off = (bite.biteUm - 5) / bite.uUm;
        held += Math.abs(off) <= 2 ? 1 : 0;
        squares += off * off;
      }
      expect(held / rounds).toBeGreaterThan(0.92);
      expect(squares / rounds).toBeGreaterThan(0.1);
    },
  );
});
