import { describe, expect, it } from 'vitest';
import { adjust } from '../../shared/adjust/adjust.ts';
import { type ErrorCode, isWayscribeError } from '../../shared/errors.ts';
import { randomFrom } from './random-sheet.ts';
import { sheetOf } from './sheets.ts';

type Readings = [from: string, to: string, reading: number][];

function network(stations: Record<string, [number, number]>, readings: Readings) {
  const walks = [{ id: 'all', zero: 'level', sigma: 1, readings }];
  return sheetOf({ kind: 'network', stations, walks, gravityCurvature: 'off' });
}

function expectSound(sheet: ReturnType<typeof sheetOf>): void {
  const { redundancy, fit, heights } = adjust(sheet);
  expect(heights.heightUm.every(Number.isFinite)).toBe(true);
  const sum = redundancy.reduce((total, r) => total + r, 0);
  expect(Math.abs(sum - fit.degreesOfFreedom)).toBeLessThan(1e-9 * fit.observations);
}

function expectRefused(sheet: ReturnType<typeof sheetOf>, code: ErrorCode): void {
  try {
    adjust(sheet);
  } catch (error) {
    expect(isWayscribeError(error, code), String(error)).toBe(true);
    return;
  }
  expect.unreachable();
}

/** Constructed layouts that an ordering by coordinates could stumble over. */
describe('unlikely layouts', () => {
  it('10,000 stations, each read against one in their midst', () => {
    const stations: Record<string, [number, number]> = { hub: [0, 0] };
    const readings: Readings = [];
    for (let k = 1; k <= 10_000; k++) {
      stations[`S${k}`] = [k * Math.cos(k), k * Math.sin(k)];
      readings.push(['hub', `S${k}`, k % 7], [`S${k}`, 'hub', k % 5]);
    }
    expectSound(network(stations, readings));
  });

  it('10,000 stations swept at one place', () => {
    const names = Array.from({ length: 10_000 }, (_, k) => `S${k}`);
    const sweep = (id: string) => ({
      id,
      slope: 'known' as const,
      sigma: 1,
      readings: names.map((name, k): [string, number] => [name, k % 7]),
    });
    const stations = Object.fromEntries(names.map((name): [string, [number, number]] => [name, [0, 0]]));
    expectSound(sheetOf({ kind: 'network', stations, sweeps: [sweep('a'), sweep('b')] }));
  });

  it.each([12, 40])('distances that double %d times are solved soundly or refused', (steps) => {
    const stations: Record<string, [number, number]> = {};
    const readings: Readings = [];
    for (let k = 0; k < steps; k++) {
      stations[`S${k}`] = [1e-3 * 2 ** k, 0];
      if (k > 0) readings.push([`S${k - 1}`, `S${k}`, k % 3], [`S${k}`, `S${k - 1}`, k % 2]);
    }
    const sheet = network(stations, readings);
    if (steps < 20) expectSound(sheet);
    else expectRefused(sheet, 'adjust.notDetermined');
  });

  it('readings between anything and anything are refused before they are tried', () => {
    const random = randomFrom(5);
    const stations: Record<string, [number, number]> = {};
    const readings: Readings = [];
    for (let k = 0; k < 8000; k++) {
      stations[`S${k}`] = [random() * 1000, random() * 1000];
      for (let each = 0; k > 0 && each < 5; each++)
        readings.push([`S${k}`, `S${Math.floor(random() * k)}`, 0]);
    }
    expectRefused(network(stations, readings), 'sheet.tooLarge');
  });
});
