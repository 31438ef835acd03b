import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { adjustedHeights, indices } from '../../tests/tools/adjusted-heights.ts';
import { lineOf } from '../figures/line.ts';
import { lineReference } from '../figures/line-reference.ts';
import { lineMetal } from './line-metal.ts';
import type { TargetSpec } from './metal.ts';

const flat: TargetSpec = { shape: 'flat', crownUm: 0, tilt: 'free', biteUm: 5, stopPasses: 0 };

function metal(heightUm: number[], spec: Partial<TargetSpec> = {}, stepMm = 100, u = 0.1) {
  const adjusted = adjustedHeights({
    xMm: heightUm.map((_, k) => stepMm * k),
    heightUm,
    covarianceUm2: heightUm.map((_, i) => heightUm.map((__, j) => (i === j ? u * u : 0))),
  });
  const line = lineOf(adjusted, indices(heightUm.length));
  return lineMetal(adjusted, line, lineReference('ends', line), { ...flat, ...spec });
}

const removals = (result: ReturnType<typeof metal>) =>
  Object.values(result.stations).map((station) => Math.round(station.removeUm * 1e9) / 1e9);

describe('flat target, free tilt', () => {
  test('a crown comes down to the line under its ends, tilted as it lies', () => {
    const result = metal([0, 12, 22, 16, 10]);
    expect(removals(result)).toEqual([0, 9.5, 17, 8.5, 0]);
    expect(Object.values(result.stations).map((station) => station.passes)).toEqual([0, 2, 4, 2, 0]);
    expect(result.plan).toEqual([
      { pass: 1, stations: ['F2'] },
      { pass: 2, stations: ['F2'] },
      { pass: 3, stations: ['F1', 'F2', 'F3'] },
      { pass: 4, stations: ['F1', 'F2', 'F3'] },
    ]);
  });

  test('a hollow about the middle station: of all equal tangents the one that cuts least deep', () => {
    const result = metal([0, -5, -8, -5, 0]);
    expect(removals(result)).toEqual([8, 3, 0, 3, 8]);
    expect(removals(metal([0, -5, -8, -3, 8]))).toEqual([12, 5, 0, 3, 12]);
  });

  test('the middle is the middle of the stations, not of the travel', () => {
    // crowded at the left: the mean of x lies left of the low station, so the left facet carries
    const adjusted = adjustedHeights({ xMm: [0, 10, 20, 100, 200], heightUm: [0, 1, 2, -9, 6] });
    const line = lineOf(adjusted, indices(5));
    const result = lineMetal(adjusted, line, lineReference('ends', line), flat);
    expect(result.stations.F0!.removeUm).toBe(0);
    expect(result.stations.F3!.removeUm).toBe(0);
    expect(result.stations.F4!.removeUm).toBeGreaterThan(20);
  });
});

test('fixed tilt is a shift: the target stays parallel to the reference in use', () => {
  expect(removals(metal([0, -5, -8, -5, 10], { tilt: 'fixed' }))).toEqual([13, 5.5, 0, 0.5, 13]);
});

test('a crowned target asks nothing of metal that is crowned by as much', () => {
  expect(removals(metal([0, 3, 4, 3, 0], { shape: 'crown', crownUm: 4 }))).toEqual([0, 0, 0, 0, 0]);
  expect(removals(metal([0, 0, 0, 0, 0], { shape: 'hollow', crownUm: 4 }))).toEqual([0, 3, 4, 3, 0]);
  expect(metal([0, 0, 0], { shape: 'crown', crownUm: 4 }).target).toBe('crown');
});

test('the last passes are left to the blue', () => {
  expect(metal([0, 12, 22, 16, 10], { stopPasses: 1 }).plan).toHaveLength(3);
  expect(metal([0, 12, 22, 16, 10], { stopPasses: 9 }).plan).toEqual([]);
});

test('a removal below twice its own uncertainty is not worth a stroke', () => {
  // u of the crown's middle: √(1 + ¼ + ¼)·0.1
  expect(metal([0, 0.24, 0]).stations.F1).toMatchObject({ worthAStroke: false, passes: 1 });
  const sure = metal([0, 0.25, 0]).stations.F1!;
  expect(sure.worthAStroke).toBe(true);
  expect(sure.uUm).toBeCloseTo(0.1 * Math.sqrt(1.5), 12);
});

test('a bite that nobody can count is refused by name', () => {
  expect(() => metal([0, 10, 0], { biteUm: 1e-300 })).toThrow('target.biteUm');
});

test('a flat plate turns about the middle of a crown and rests on both ends of a hollow', () => {
  expect(metal([0, 12, 22, 12, 0]).contact).toEqual({ restsOn: ['F2'], inked: ['F2'] });
  expect(metal([0, -2, -8, -5, 0]).contact).toEqual({ restsOn: ['F0', 'F4'], inked: ['F0', 'F1', 'F4'] });
});

const heightsOfLine = fc.array(fc.integer({ min: -40, max: 40 }), { minLength: 3, maxLength: 12 });

describe('properties', () => {
  test('never above the metal, touching it, the plan as deep as the removal', () => {
    fc.assert(
      fc.property(heightsOfLine, fc.boolean(), fc.integer({ min: 0, max: 30 }), (heights, free, crownUm) => {
        const result = metal(heights, { tilt: free ? 'free' : 'fixed', shape: 'crown', crownUm });
        const stations = Object.values(result.stations);
        for (const { removeUm } of stations) expect(removeUm).toBeGreaterThanOrEqual(0);
        expect(Math.min(...stations.map((station) => station.removeUm))).toBe(0);
        for (const [name, { passes }] of Object.entries(result.stations)) {
          expect(result.plan.filter((pass) => pass.stations.includes(name))).toHaveLength(passes);
        }
        result.plan.forEach((pass, i) => {
          expect(result.plan[i + 1]?.stations ?? pass.stations).toEqual(
            expect.arrayContaining([...pass.stations]),
          );
        });
      }),
    );
  });

  test('tilting the metal changes no removal of a free target and no print', () => {
    fc.assert(
      fc.property(heightsOfLine, fc.integer({ min: -50, max: 50 }), (heights, tilt) => {
        const plain = metal(heights);
        const tilted = metal(heights.map((height, k) => height + tilt * k));
        expect(removals(tilted)).toEqual(removals(plain));
        expect(tilted.contact).toEqual(plain.contact);
      }),
    );
  });
});

test('of fixed tilt, a crown stands on the reference as it lies in the metal, wherever the stations crowd', () => {
  const xMm = [0, 10, 20, 100, 200];
  const crown = xMm.map((x) => (4 * 6 * x * (200 - x)) / 200 ** 2);
  const adjusted = adjustedHeights({ xMm, heightUm: xMm.map((x, i) => 0.05 * x + crown[i]!) });
  const line = lineOf(adjusted, indices(5));
  const spec: TargetSpec = { ...flat, shape: 'crown', crownUm: 6, tilt: 'fixed' };
  // Against the ends the metal is the wished crown already; against its least-squares line that crown leans.
  const removal = (kind: 'ends' | 'leastSquares') =>
    Object.values(lineMetal(adjusted, line, lineReference(kind, line), spec).stations).map((s) => s.removeUm);
  for (const removeUm of removal('ends')) expect(removeUm).toBeCloseTo(0, 9);
  const mean = xMm.reduce((sum, x) => sum + x / 5, 0);
  const lean =
    xMm.reduce((sum, x, i) => sum + (x - mean) * crown[i]!, 0) /
    xMm.reduce((sum, x) => sum + (x - mean) ** 2, 0);
  const expected = xMm.map((x) => -lean * x);
  const least = Math.min(...expected);
  for (const [i, removeUm] of removal('leastSquares').entries()) {
    expect(removeUm).toBeCloseTo(expected[i]! - least, 9);
  }
});
