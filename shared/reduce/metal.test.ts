import { expect, test } from 'vitest';
import { reduce } from '../reduce.ts';
import { validateSheet } from '../sheet/sheet.ts';

const stations = { T0: [0, 0], T1: [100, 0], T2: [200, 0], T3: [300, 0] };
const target = { shape: 'flat', tilt: 'fixed', biteUm: 2 };

test('a slide of fixed tilt is scraped parallel to the motion that it was read along', () => {
  const heights = [0, 4, 5, 9];
  const sheet = {
    sheet: 1,
    kind: 'slide',
    stations,
    lines: { top: Object.keys(stations) },
    sweeps: [{ id: 's', slope: 'known', readings: heights.map((height, k) => [`T${k}`, height]) }],
    target,
  };
  const { metal, notes } = reduce(validateSheet(sheet));
  const removals = Object.values(metal.top!.stations).map(({ removeUm }) => removeUm);
  for (const [k, removeUm] of removals.entries()) expect(removeUm).toBeCloseTo(heights[k]!, 9);
  expect(notes.join(' ')).toContain('parallel to the motion');
});

test('a network has metal by line when a target is named, and a sweep begun in mid-line is told of', () => {
  const sweep = ['T1', 'T0', 'T2', 'T3'].map((station) => [station, 0]);
  const walk = ['T0', 'T1', 'T2'].map((from, k) => [from, `T${k + 1}`, k]);
  const sheet = {
    sheet: 1,
    kind: 'network',
    stations,
    lines: { first: Object.keys(stations) },
    walks: [{ id: 'w', readings: walk }],
    sweeps: [{ id: 's', readings: sweep }],
    target,
  };
  const { metal, notes } = reduce(validateSheet(sheet));
  expect(Object.keys(metal)).toEqual(['first']);
  expect(notes.join(' ')).toContain('"s" runs away from its first station to both sides');
  expect(reduce(validateSheet({ ...sheet, target: undefined })).metal).toEqual({});
});
