import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { demoSetups } from '../session/demo-setups.ts';
import { setupSchema } from '../session/setup.ts';
import { planFor } from '../survey/plan-for.ts';
import { readStations, stationRuns } from './station-runs.ts';

const linesOf = (kind: keyof typeof demoSetups, more = {}) =>
  Object.values(planFor(setupSchema.parse({ ...demoSetups[kind], ...more })).lines);

const plate = linesOf('plate');

describe('runs of stations', () => {
  test.each([
    [['F0', 'F1', 'F2', 'F5'], 'F0–\u2060F2, F5'],
    [[], ''],
    [['F3'], 'F3'],
  ])('%j', (names, words) => expect(stationRuns(names, linesOf('way'))).toBe(words));

  test('never go from one line to another', () => {
    expect(stationRuns(['F7', 'F8', 'R0', 'R1'], linesOf('bed'))).toBe('F7–\u2060F8, R0–\u2060R1');
    expect(stationRuns(['H7', 'V1', 'C'], plate)).toBe('C, H7, V1');
  });

  test.each([
    ['a way', linesOf('way')],
    ['a bed', linesOf('bed')],
    ['a plate of eight lines', plate],
    ['a plate of a grid', linesOf('plate', { pattern: 'grid' })],
  ])('of %s are read back as the same stations', (_, lines) => {
    const order = [...new Set(lines.flat())];
    fc.assert(
      fc.property(fc.subarray(order), (names) => {
        const read = readStations(stationRuns(names, lines), lines);
        expect(read).toEqual({ stations: names, unknown: null });
      }),
    );
  });

  test.each([
    ['f0-F2, F9', ['F0', 'F1', 'F2', 'F9'], null],
    ['F2-F0', ['F0', 'F1', 'F2'], null],
    ['F1 F99', [], 'F99'],
    ['F1-F99', [], 'F1-F99'],
    ['-', [], '-'],
    ['', [], null],
  ])('%j is read by hand', (text, stations, unknown) => {
    expect(readStations(text, linesOf('way'))).toEqual({ stations, unknown });
  });
});
