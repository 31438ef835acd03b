import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isWayscribeError } from '../../shared/errors.ts';
import { reduce } from '../../shared/reduce.ts';
import type { Result } from '../../shared/sheet/result.ts';
import { type Sheet, validateSheet } from '../../shared/sheet/sheet.ts';
import { randomFrom, randomSheet } from './random-sheet.ts';
import { bed } from './sheets.ts';

/** A bed, a plate over its stations, or a random network that determines its heights. */
const surveys = fc
  .tuple(fc.constantFrom('bed', 'plate', 'network'), fc.nat(100_000))
  .map(([kind, seed]): Sheet => {
    if (kind === 'network') return determined(seed);
    const sheet = bed({ seed, noise: 1 + (seed % 3), steps: 3 + (seed % 6) });
    return kind === 'bed' ? sheet : { ...sheet, kind: 'plate', lines: {} };
  });

function determined(seed: number): Sheet {
  for (let next = seed; ; next++) {
    const sheet = randomSheet(next);
    try {
      reduce(sheet);
      return sheet;
    } catch (error) {
      if (!isWayscribeError(error, 'adjust.notDetermined')) throw error;
    }
  }
}

function expectClose(actual: number, wanted: number, tolerance: number, scale: number, what: string): void {
  const off = Math.abs(actual - wanted);
  const allowed = tolerance * Math.max(Math.abs(wanted), scale);
  if (!(off <= allowed)) expect.fail(`${what}: ${actual} is not ${wanted}`);
}

/**
 * That two results say the same, heights `factor` times as large. Residual-like numbers are compared in
 * the unit of the readings, `readingFactor` times as large.
 */
function expectSame(actual: Result, wanted: Result, tolerance: number, factor = 1): void {
  const size = Math.max(...Object.values(wanted.stations).map(({ heightUm }) => Math.abs(heightUm)), 1e-3);
  for (const [name, { heightUm, uUm }] of Object.entries(wanted.stations)) {
    expectClose(
      actual.stations[name]!.heightUm,
      factor * heightUm,
      tolerance,
      factor * size,
      `height of ${name}`,
    );
    expectClose(actual.stations[name]!.uUm, factor * uUm, tolerance, factor * size, `u of ${name}`);
  }
  for (const [name, { value }] of Object.entries(wanted.figures)) {
    expectClose(actual.figures[name]!.value, factor * value, tolerance, factor * size, name);
  }
  for (const [name, { straightness }] of Object.entries(wanted.lines)) {
    for (const kind of ['ends', 'leastSquares', 'minimumZone'] as const) {
      const value = actual.lines[name]!.straightness[kind].valueUm;
      expectClose(value, factor * straightness[kind].valueUm, tolerance, factor * size, `${name} ${kind}`);
    }
  }
  expect(actual.fit.datumDefect).toBe(wanted.fit.datumDefect);
  expect(actual.fit.degreesOfFreedom).toBe(wanted.fit.degreesOfFreedom);
}

function expectSameReadings(actual: Result['readings'], wanted: Result['readings'], tolerance: number): void {
  wanted.forEach((reading, k) => {
    expectClose(actual[k]!.redundancy, reading.redundancy, tolerance, 1, `redundancy of reading ${k}`);
    if (reading.w === null || reading.redundancy < 1e-3) return;
    expectClose(Math.abs(actual[k]!.w!), Math.abs(reading.w), 10 * tolerance, 1, `w of reading ${k}`);
  });
}

const mapReadings = (sheet: Sheet, tilt: (v: number) => number, height: (v: number) => number): Sheet => ({
  ...sheet,
  walks: sheet.walks.map((walk) => ({
    ...walk,
    readings: walk.readings.map(([a, b, v]) => [a, b, v === null ? null : tilt(v)]),
  })),
  sweeps: sheet.sweeps.map((sweep) => ({
    ...sweep,
    readings: sweep.readings.map(([a, v]) => [a, v === null ? null : height(v)]),
  })),
});

const withSigmas = (sheet: Sheet, tilt: number, height: number): Sheet => ({
  ...sheet,
  walks: sheet.walks.map((walk) => ({ ...walk, sigma: (walk.sigma ?? 1) * tilt })),
  sweeps: sheet.sweeps.map((sweep) => ({ ...sweep, sigma: (sweep.sigma ?? 1) * height })),
});

function shuffled<T>(values: readonly T[], seed: number): T[] {
  const random = randomFrom(seed);
  return values
    .map((value) => [random(), value] as const)
    .sort(([a], [b]) => a - b)
    .map(([, value]) => value);
}

describe('a reduction', () => {
  const runs = { numRuns: 60, seed: 314 };

  it('is not changed by a tilt of the whole survey', () => {
    fc.assert(
      fc.property(
        surveys,
        fc.integer({ min: -500, max: 500 }),
        fc.integer({ min: -500, max: 500 }),
        (sheet, along, across) => {
          const plane = (name: string) => {
            const [x, y] = sheet.stations[name]!;
            return (along * x + across * y) / 1000;
          };
          const tilted: Sheet = {
            ...sheet,
            walks: sheet.walks.map((walk) => ({
              ...walk,
              readings: walk.readings.map(([a, b, v]) => {
                const [[ax, ay], [bx, by]] = [sheet.stations[a]!, sheet.stations[b]!];
                const slope = ((plane(b) - plane(a)) * 1000) / Math.hypot(bx - ax, by - ay);
                return [a, b, v === null ? null : v + walk.facing * slope];
              }),
            })),
            sweeps: sheet.sweeps.map((sweep) => ({
              ...sweep,
              readings: sweep.readings.map(([a, v]) => [a, v === null ? null : v + sweep.sense * plane(a)]),
            })),
          };
          const [actual, wanted] = [reduce(tilted), reduce(sheet)];
          // Tilts of 500 times the heights cost digits, and no more.
          expectSame(actual, wanted, 1e-8);
          expectSameReadings(actual.readings, wanted.readings, 1e-8);
        },
      ),
      runs,
    );
  });

  it.each([1e6, 1e-6])('scales with its readings, times %d', (factor) => {
    fc.assert(
      fc.property(surveys, (sheet) => {
        const times = (v: number) => v * factor;
        const scaled = withSigmas(mapReadings(sheet, times, times), factor, factor);
        const [actual, wanted] = [reduce(scaled), reduce(withSigmas(sheet, 1, 1))];
        expectSame(actual, wanted, 1e-10, factor);
        expectSameReadings(actual.readings, wanted.readings, 1e-9);
      }),
      runs,
    );
  });

  it('reads a walk from the other end with the contrary sign as the same', () => {
    fc.assert(
      fc.property(surveys, (sheet) => {
        const plain = { ...sheet, walks: sheet.walks.map((walk) => ({ ...walk, drift: false })) };
        const turned: Sheet = {
          ...plain,
          walks: plain.walks.map((walk) => ({
            ...walk,
            facing: walk.facing === 1 ? -1 : 1,
            readings: walk.readings.map(([a, b, v]): [string, string, number | null] => [b, a, v]).reverse(),
          })),
        };
        let wanted: Result;
        try {
          wanted = reduce(plain);
        } catch {
          fc.pre(false);
          return;
        }
        const actual = reduce(turned);
        expectSame(actual, wanted, 1e-10);
        const sizes = plain.walks.map(({ readings }) => readings.filter(([, , v]) => v !== null).length);
        const back = sizes.flatMap((size, w) => {
          const start = sizes.slice(0, w).reduce((sum, each) => sum + each, 0);
          return actual.readings.slice(start, start + size).reverse();
        });
        expectSameReadings(back, wanted.readings.slice(0, back.length), 1e-9);
      }),
      runs,
    );
  });

  it('does not depend on the order in which stations are named', () => {
    fc.assert(
      fc.property(surveys, fc.nat(), (sheet, seed) => {
        const stations = Object.fromEntries(shuffled(Object.entries(sheet.stations), seed));
        const [actual, wanted] = [reduce({ ...sheet, stations }), reduce(sheet)];
        expectSame(actual, wanted, 1e-10);
        expectSameReadings(actual.readings, wanted.readings, 1e-9);
      }),
      runs,
    );
  });

  it('of inches, arc seconds and microinches is that of mm, µm/m and µm to 1e-12', () => {
    fc.assert(
      fc.property(surveys, (sheet) => {
        const arcsec = (1e6 * Math.PI) / 648_000;
        const inInches = withSigmas(
          {
            ...mapReadings(
              sheet,
              (v) => v / arcsec,
              (v) => v / 0.0254,
            ),
            units: { length: 'in', tilt: 'arcsec', height: 'uin' },
            stations: Object.fromEntries(
              Object.entries(sheet.stations).map(([name, [x, y]]) => [name, [x / 25.4, y / 25.4]]),
            ),
          },
          1 / arcsec,
          1 / 0.0254,
        );
        expectSame(reduce(validateSheet(inInches)), reduce(withSigmas(sheet, 1, 1)), 1e-12);
      }),
      runs,
    );
  });

  it('gives the same bytes for the same sheet', () => {
    fc.assert(
      fc.property(surveys, (sheet) => {
        const again = JSON.parse(JSON.stringify(sheet)) as Sheet;
        expect(JSON.stringify(reduce(again))).toBe(JSON.stringify(reduce(sheet)));
      }),
      runs,
    );
  });
});
