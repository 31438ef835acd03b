import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { reduce } from '../../shared/reduce.ts';
import { resultSchema } from '../../shared/sheet/result.ts';
import { bed, sheetOf, stationRow, stepped } from './sheets.ts';

describe('one walk', () => {
  it.each([2, 3, 10, 101])(
    'of %d equal steps has the known uncertainty L·σ·√(k(n−k)/n) off its ends',
    (n) => {
      const { names, stations } = stationRow('F', n, 250);
      const sigma = 1.7;
      const sheet = sheetOf({
        kind: 'way',
        stations,
        lines: { front: names },
        gravityCurvature: 'off',
        walks: [{ id: 'out', sigma, readings: stepped(names, 250, (k) => k * k) }],
      });
      const { lines } = reduce(sheet);
      names.forEach((name, k) => {
        const known = 0.25 * sigma * Math.sqrt((k * (n - k)) / n);
        expect(Math.abs(lines.front!.stations[name]!.uUm - known)).toBeLessThanOrEqual(1e-9 * n * sigma);
      });
    },
  );

  it('has nothing to check it, and says so', () => {
    const { names, stations } = stationRow('F', 5, 200);
    const readings = stepped(names, 200, (k) => Math.sin(k));
    const result = reduce(
      sheetOf({ kind: 'way', stations, lines: { front: names }, walks: [{ id: 'out', readings }] }),
    );
    for (const reading of result.readings) expect(reading).toMatchObject({ redundancy: 0, w: null });
    expect(result.notes.join(' ')).toContain('Nothing checks these readings');
    expect(result.fit).toMatchObject({
      degreesOfFreedom: 0,
      s0: null,
      chiSquareOk: null,
      sigmaScaled: false,
    });
    expect(result.zeros).toEqual({});
    expect(result.notes.join(' ')).toContain('zero of "out"');
  });

  it('out and back by a level of assumed scatter is scaled by what it shows', () => {
    const { names, stations } = stationRow('F', 8, 200);
    const bent = (k: number) => k * (8 - k);
    const walks = [1, -1].map((sign) => ({
      id: sign > 0 ? 'out' : 'back',
      readings: stepped(names, 200, bent).map(([a, b, value], k): [string, string, number] => [
        a,
        b,
        value + sign * (k % 2 === 0 ? 0.2 : -0.2),
      ]),
    }));
    const assumed = reduce(sheetOf({ kind: 'way', stations, lines: { front: names }, walks }));
    const known = reduce(
      sheetOf({
        kind: 'way',
        stations,
        lines: { front: names },
        walks: walks.map((walk) => ({ ...walk, sigma: 1 })),
      }),
    );
    expect(assumed.fit.sigmaScaled).toBe(true);
    expect(known.fit.sigmaScaled).toBe(false);
    expect(assumed.stations.F4!.uUm).toBeCloseTo(known.stations.F4!.uUm * assumed.fit.s0!, 12);
    const [first] = assumed.readings;
    expect(first!.w).toBeCloseTo(known.readings[0]!.w! / assumed.fit.s0!, 9);
    expect(assumed.notes.join(' ')).toContain('scaled by s0');
  });

  it('with readings that agree perfectly has no suspect and no NaN', () => {
    const { names, stations } = stationRow('F', 8, 200);
    const readings = stepped(names, 200, (k) => k * (8 - k));
    const walks = ['out', 'back'].map((id) => ({ id, readings }));
    const result = reduce(sheetOf({ kind: 'way', stations, lines: { front: names }, walks }));
    expect(resultSchema.safeParse(result).success).toBe(true);
    expect(result.readings.filter(({ suspect }) => suspect)).toEqual([]);
    for (const { w } of result.readings) expect(w).toBe(0);
  });
});

describe('a chip of 45 µm/m under one foot', () => {
  it('is named, and only it, wherever it lies in a bed walked out and back with cross readings', () => {
    fc.assert(
      fc.property(
        fc.nat(1000),
        fc.nat(39),
        fc.constantFrom(-45, 45),
        fc.boolean(),
        (seed, at, chip, assumed) => {
          const sheet = bed({ seed, noise: 0.7 });
          if (assumed) for (const each of sheet.walks) delete each.sigma;
          const walk = Math.floor(at / 10);
          sheet.walks[walk]!.readings[at % 10]![2]! += chip;
          const result = reduce(sheet);
          const suspects = result.readings.filter(({ suspect }) => suspect);
          const [from, to] = sheet.walks[walk]!.readings[at % 10]!;
          expect(suspects).toHaveLength(1);
          expect(suspects[0]).toMatchObject({ walk: sheet.walks[walk]!.id, from, to });
          const note = result.notes.find((text) => text.includes('wipe, repeat'));
          expect(note).toContain(`${from} → ${to}`);
          expect(note).toContain(chip > 0 ? 'more' : 'less');
          expect(result.fit.chiSquareOk).toBe(false);
        },
      ),
      { numRuns: 60, seed: 45 },
    );
  });

  it('is named in a cross reading too', () => {
    const sheet = bed({ seed: 7, noise: 0.7 });
    sheet.walks[4]!.readings[6]![2]! += 45;
    const suspects = reduce(sheet).readings.filter(({ suspect }) => suspect);
    expect(suspects).toMatchObject([{ walk: 'cross', from: 'F6', to: 'R6' }]);
  });

  it('nothing is named where there is none', () => {
    const result = reduce(bed({ seed: 3, noise: 0.7 }));
    expect(result.readings.some(({ suspect }) => suspect)).toBe(false);
    expect(result.fit.chiSquareOk).toBe(true);
  });

  it('that only one other reading could contradict is said to be one of the two', () => {
    const { names, stations } = stationRow('F', 6, 200);
    const walk = (id: string, chip: number) => ({
      id,
      sigma: 1,
      readings: stepped(names, 200, (k) => Math.sin(k)).map(([a, b, value], k): [string, string, number] => [
        a,
        b,
        value + (k === 3 ? chip : 0),
      ]),
    });
    const result = reduce(
      sheetOf({ kind: 'way', stations, lines: { front: names }, walks: [walk('out', 45), walk('back', 0)] }),
    );
    expect(result.readings.filter(({ suspect }) => suspect)).toHaveLength(1);
    expect(result.notes.join(' ')).toContain('may as well be station F3 → F4, walk "back"');
  });
});

describe('the zero of a level', () => {
  const { names, stations } = stationRow('F', 4, 200);
  it('is told, with its uncertainty, once the level was turned end for end', () => {
    const zero = 37;
    const heights = (k: number) => 3 * k + k * k;
    const walk = (id: string, facing: 1 | -1) => ({
      id,
      zero: 'level A',
      facing,
      sigma: 0.5,
      readings: stepped(names, 200, heights).map(([a, b, slope]): [string, string, number] => [
        a,
        b,
        facing * slope + zero,
      ]),
    });
    const result = reduce(
      sheetOf({
        kind: 'way',
        stations,
        lines: { front: names },
        walks: [walk('out', 1), walk('back', -1)],
      }),
    );
    expect(result.zeros['level A']!.value).toBeCloseTo(zero, 9);
    // The mean of 8 readings: half a sum and a difference cancels the slopes.
    expect(result.zeros['level A']!.u).toBeCloseTo(0.5 / Math.sqrt(8), 9);
    expect(result.fit.datumDefect).toBe(1);
  });
});

describe('a long and weak tie', () => {
  it('is a tie: 2,000 steps between two heights that are known poorly', () => {
    const { names, stations } = stationRow('F', 2000, 100);
    const result = reduce(
      sheetOf({
        kind: 'way',
        stations,
        lines: { front: names },
        gravityCurvature: 'off',
        walks: [{ id: 'out', sigma: 1, readings: stepped(names, 100, () => 0) }],
        sweeps: [
          {
            id: 'ends',
            offset: 'known',
            slope: 'known',
            sigma: 1000,
            readings: [
              ['F0', 0],
              ['F2000', 200],
            ],
          },
        ],
      }),
    );
    expect(result.fit.datumDefect).toBe(0);
    // The ends tell a slope of 200 µm over 200 m, which is what the level does not see: 1 µm/m.
    expect(result.zeros.out!.value).toBeCloseTo(-1, 9);
    expect(result.zeros.out!.u).toBeCloseTo(Math.hypot(Math.SQRT2 * 1000, 0.1 * Math.sqrt(2000)) / 200, 6);
  });
});

describe('the curve of the horizon', () => {
  // Sagitta L²/(8R), R = 6371 km: 1.962 µm at 10 m (arithmetic); a straight way read by levels seems hollow.
  const { names, stations } = stationRow('F', 20, 500);
  const way = (gravityCurvature: 'auto' | 'on' | 'off', scale = 1) =>
    reduce(
      sheetOf({
        kind: 'way',
        stations: Object.fromEntries(
          Object.entries(stations).map(([name, [x, y]]) => [name, [x * scale, y]]),
        ),
        lines: { front: names },
        gravityCurvature,
        walks: [{ id: 'out', readings: stepped(names, 500, () => 0) }],
      }),
    );

  it('is added where it reaches 1 µm, and said', () => {
    const result = way('auto');
    expect(result.stations.F10!.heightUm).toBeCloseTo(1.96202, 4);
    expect(result.notes.join(' ')).toContain('horizon');
  });

  it('is seen the other way round by a level turned end for end', () => {
    const walk = (id: string, facing: 1 | -1) => ({
      id,
      facing,
      sigma: 1,
      readings: stepped(names, 500, () => 0),
    });
    const walks = [walk('out', 1), walk('back', -1)];
    const { stations: heights, fit } = reduce(
      sheetOf({ kind: 'way', stations, lines: { front: names }, walks }),
    );
    expect(heights.F10!.heightUm).toBeCloseTo(1.96202, 4);
    expect(fit.s0).toBeLessThan(1e-9);
  });

  it('is left alone where it does not, or when it is switched off', () => {
    expect(way('auto', 0.5).stations.F10!.heightUm).toBe(0);
    expect(way('off').stations.F10!.heightUm).toBe(0);
    expect(way('on', 0.5).stations.F10!.heightUm).toBeCloseTo(0.4905, 4);
  });
});
