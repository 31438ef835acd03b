import { describe, expect, test } from 'vitest';
import type { SetupInput } from '../../../shared/session/setup.ts';
import { exactSurvey } from '../../../tests/tools/exact-survey.ts';
import { bedHeights, trueBedHeights } from './bed-heights.ts';

/** Constructed: a hollow bed whose rear way rises towards the tail end. */
const setup: SetupInput = {
  kind: 'bed',
  part: 'bed',
  surface: 'ways',
  lengthMm: 900,
  gaugeMm: 300,
  baseMm: 150,
  stations: 7,
  instrument: { name: 'level', source: 'typed', unit: 'um/m' },
};
const surface = (x: number, y: number) =>
  0.02 * x + 0.05 * y - 8 * Math.sin((Math.PI * x) / 900) + (y > 0 ? x / 150 : 0);
const zero = (run: string) => (run === 'across' ? 40 : 15);
const session = (takes?: number) => exactSurvey(setup, surface, zero, takes);
const truth = Object.fromEntries(
  session().plan.stations.map(({ name, xMm, yMm }) => [name, surface(xMm, yMm)]),
);
const walk = 6;
const heightOf = (stations: readonly { name: string; heightUm: number }[], name: string) =>
  stations.find((station) => station.name === name)?.heightUm;

describe('a bed walked whole', () => {
  test('stands over three of its corners; the fourth shows the wind', () => {
    const { front, rear, corners } = bedHeights(session(), 'ends');
    expect(corners).toEqual(['F0', 'F6', 'R0']);
    expect(heightOf(front, 'F3')).toBeCloseTo(-8, 6);
    expect(heightOf(rear, 'R0')).toBeCloseTo(0, 6);
    expect(heightOf(rear, 'R6')).toBeCloseTo(6, 6);
  });

  test.each(['ends', 'leastSquares', 'minimumZone'] as const)('is its true shape over %s', (reference) => {
    const measured = bedHeights(session(), reference);
    const exact = trueBedHeights(session(), reference, truth);
    for (const line of ['front', 'rear'] as const) {
      expect(measured[line]).toHaveLength(7);
      for (const { name, heightUm } of measured[line]) {
        expect(heightUm, name).toBeCloseTo(heightOf(exact[line], name)!, 6);
      }
    }
  });

  test('leans as its cross slope has changed since the first pair, whatever the zero of the level', () => {
    const { leans } = bedHeights(session(), 'ends');
    expect(leans.map(({ from, to }) => `${from}-${to}`)).toContain('F6-R6');
    for (const { xMm, slopeUmPerM } of leans) expect(slopeUmPerM).toBeCloseTo(((xMm / 150) * 1000) / 300, 6);
  });
});

describe('a bed half walked', () => {
  test('is one way over its own ends while nothing joins the other', () => {
    const { front, rear, corners, leans } = bedHeights(session(2 * walk), 'ends');
    expect([front.length, rear.length, corners, leans]).toEqual([7, 0, null, []]);
    expect(heightOf(front, 'F3')).toBeCloseTo(-8, 6);
  });

  test('leans from the second reading across on', () => {
    const { leans } = bedHeights(session(2 * walk + 3), 'ends');
    expect(leans.map(({ from }) => from)).toEqual(['F0', 'F1', 'F2']);
    expect(leans[2]!.slopeUmPerM).toBeCloseTo(2000 / 300, 6);
    expect(leans[0]!.uUmPerM).toBe(0);
  });

  test('before the first reading nothing is known', () => {
    expect(bedHeights(session(0), 'ends')).toEqual({ front: [], rear: [], corners: null, leans: [] });
  });
});
