import { expect, test } from 'vitest';
import { reduce } from '../reduce.ts';
import { validateSheet } from '../sheet/sheet.ts';

const sheet = (readings: readonly (readonly [string, number])[], more: object = {}) =>
  validateSheet({
    sheet: 1,
    kind: 'repeat',
    stations: { A0: [0, 0], A1: [100, 0], B0: [0, 100], B1: [100, 100] },
    lines: { 'row A': ['A0', 'A1'], 'row B': ['B0', 'B1'] },
    sweeps: [{ id: 'gauge', sigma: 0.5, readings: [...readings.map(([at, value]) => [at, value])] }],
    ...more,
  });

const readings = [
  ['A0', 3],
  ['A1', 4],
  ['B0', 7],
  ['B1', 2],
] as const;

test('the greatest less the least reading over the whole plate, kept apart from any flatness (constructed)', () => {
  const { figures, stations, notes } = reduce(sheet(readings));
  expect(Object.keys(figures)).toEqual(['repeatReading']);
  expect(figures.repeatReading!.value).toBeCloseTo(5, 9);
  expect(figures.repeatReading!.u).toBeCloseTo(0.5 * Math.SQRT2, 9);
  expect(stations.B0!.heightUm).toBeCloseTo(3, 9);
  expect(notes[0]).toContain('how flat it is as a whole it cannot tell');
});

test('what lies over a plane would show no less: a slope of the readings is no tilt of the plate', () => {
  const slope = [
    ['A0', 0],
    ['A1', 1],
    ['B0', 2],
    ['B1', 3],
  ] as const;
  expect(reduce(sheet(slope)).figures.repeatReading!.value).toBeCloseTo(3, 9);
});

test('it is judged by its own limit, and tells nothing of what to scrape', () => {
  const limits = [{ figure: 'repeatReading', max: 1 }];
  expect(reduce(sheet(readings, { limits })).verdicts[0]).toMatchObject({ verdict: 'outside' });
  expect(() => sheet(readings, { target: {} })).toThrow('target: repeat readings tell nothing');
});
