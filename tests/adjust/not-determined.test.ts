import { describe, expect, it } from 'vitest';
import { isWayscribeError, type WayscribeError } from '../../shared/errors.ts';
import { reduce } from '../../shared/reduce.ts';
import type { Sheet } from '../../shared/sheet/sheet.ts';
import { bed, sheetOf, stationRow, stepped } from './sheets.ts';

function failure(sheet: Sheet): WayscribeError {
  try {
    reduce(sheet);
  } catch (error) {
    if (isWayscribeError(error)) return error;
    throw error;
  }
  throw new Error('it was reduced');
}

describe('stations that no reading ties', () => {
  const { names, stations } = stationRow('F', 4, 200);
  const readings = stepped(names, 200, () => 0);

  it('are named', () => {
    const error = failure(
      sheetOf({
        kind: 'way',
        stations: { ...stations, X7: [900, 0] },
        lines: { front: names },
        walks: [{ id: 'out', readings }],
      }),
    );
    expect(error.code).toBe('adjust.notTied');
    expect(error.message).toContain('X7');
    expect(error.message).not.toContain('F1');
  });

  it('are the smaller part where a walk is broken', () => {
    const broken = readings.map(([a, b, v], k): [string, string, number | null] => [
      a,
      b,
      k === 2 ? null : v,
    ]);
    const error = failure(
      sheetOf({ kind: 'way', stations, lines: { front: names }, walks: [{ id: 'out', readings: broken }] }),
    );
    expect(error.code).toBe('adjust.notTied');
    expect(error.place).toBe('stations F3, F4');
  });

  it('are no matter where another reading ties a skipped one', () => {
    const skipped: [string, string, number | null][] = [
      ...readings.map((reading) => [...reading] as typeof reading),
    ];
    skipped[2]![2] = null;
    const walks = [
      { id: 'out', readings: skipped },
      { id: 'back', readings },
    ];
    const result = reduce(sheetOf({ kind: 'way', stations, lines: { front: names }, walks }));
    expect(result.readings).toHaveLength(7);
    expect(result.notes).toContain('One reading was skipped.');
  });

  it('two lines of a bed without a cross reading are not tied', () => {
    const sheet = bed({ seed: 1, noise: 0.1 });
    sheet.walks.pop();
    expect(failure(sheet).code).toBe('adjust.notTied');
  });
});

describe('what the readings cannot tell apart', () => {
  const { names, stations } = stationRow('F', 8, 200);
  const out = stepped(names, 200, (k) => k * (8 - k));
  const way = (walks: Parameters<typeof sheetOf>[0]['walks']) =>
    sheetOf({ kind: 'way', stations, lines: { front: names }, walks });
  const drifting = (backFacing: 1 | -1) =>
    way([
      { id: 'out', zero: 'level A', drift: true, sigma: 1, readings: out },
      {
        id: 'back',
        zero: 'level A',
        drift: true,
        sigma: 1,
        facing: backFacing,
        readings: [...out].reverse(),
      },
    ]);

  it('a steady drift and a bow, when the level is turned for the way back', () => {
    const error = failure(drifting(-1));
    expect(error.code).toBe('adjust.notDetermined');
    expect(error.message).toContain('the drift of walk "out"');
    expect(error.message).toContain('the drift of walk "back"');
    expect(error.remedy).toContain('facing the same way');
  });

  it('but a drift alone when it is not turned', () => {
    expect(reduce(drifting(1)).fit.datumDefect).toBe(2);
  });

  it('the slope of a slide and that of a sweep that was set up by eye', () => {
    const sweep = (slope: 'free' | 'known') =>
      sheetOf({
        kind: 'slide',
        stations,
        lines: { top: names },
        sweeps: [{ id: 's', slope, readings: names.map((name, k): [string, number] => [name, k]) }],
      });
    expect(failure(sweep('free')).code).toBe('adjust.notDetermined');
    expect(failure(sweep('free')).remedy).toContain('known');
    expect(reduce(sweep('known')).figures['top.parallelism']!.value).toBeCloseTo(8, 12);
  });

  it('a station swept only unturned, and its artefact', () => {
    const sweep = (id: string, turned: boolean, which: string[]) => ({
      id,
      artefact: 'straightedge',
      turned,
      readings: which.map((name, k): [string, number] => [name, k * k]),
    });
    const error = failure(
      sheetOf({
        kind: 'way',
        stations,
        lines: { front: names },
        sweeps: [sweep('a', false, names), sweep('b', true, names.slice(0, -1))],
      }),
    );
    expect(error.code).toBe('adjust.notDetermined');
    expect(error.message).toContain('straightedge');
    expect(error.place).toContain('F8');
  });

  it('two ways joined by a single cross reading', () => {
    const sheet = bed({ seed: 1, noise: 0.1 });
    for (const [index, walk] of sheet.walks.entries()) walk.zero = index < 4 ? `z${index >> 1}` : 'free';
    sheet.walks[4]!.readings.splice(1);
    const error = failure(sheet);
    expect(error.code).toBe('adjust.notDetermined');
    expect(error.message).toMatch(/zero of "z[01]"/);
  });
});

describe('a bar swept in two planes that no reading ties', () => {
  const bar = (extra: Record<string, [number, number]>, more: [string, number][]) =>
    sheetOf({
      kind: 'bar',
      stations: { T0: [0, 0], T1: [300, 0], S0: [0, 50], S1: [300, 50], ...extra },
      lines: { top: ['T0', 'T1'], side: ['S0', 'S1'] },
      sweeps: [
        { id: 'top', slope: 'known', sigma: 1, readings: [['T0', 0], ['T1', 18], ...more] },
        {
          id: 'side',
          slope: 'known',
          sigma: 1,
          readings: [
            ['S0', 100],
            ['S1', 97],
          ],
        },
      ],
    });

  it('has the slope of each', () => {
    const { figures } = reduce(bar({}, []));
    expect(figures['top.slope']!.value).toBeCloseTo(60, 9);
    expect(figures['side.slope']!.value).toBeCloseTo(-10, 9);
  });

  it('shows a station beside the lines against the line that it is tied to', () => {
    const { stations } = reduce(bar({ M: [150, 0] }, [['M', 12]]));
    expect(stations.M!.heightUm).toBeCloseTo(3, 9);
    // The middle less half of each end: variance 1 + 1/4 + 1/4.
    expect(stations.M!.uUm).toBeCloseTo(Math.sqrt(1.5), 9);
  });
});
