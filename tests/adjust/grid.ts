import type { Adjustment } from '../../shared/adjust/adjust.ts';
import type { Sheet } from '../../shared/sheet/sheet.ts';
import { sheetOf } from './sheets.ts';

/**
 * Variance of the far corner of an n × n grid of unit steps with unit weights, corner 0 held; computed
 * once in 80-bit arithmetic (3.011669564896534909 … 7.405760154037499282), rounded to what a number holds.
 */
export const farCorner: Readonly<Record<number, number>> = {
  10: 3.011669564896535,
  30: 4.40815287481106,
  100: 5.940830286642362,
  200: 6.823352736982302,
  316: 7.405760154037499,
};

/** The constructed grid: heights differ between neighbours along rows and columns, zeros known. */
export function grid(n: number, kind: 'network' | 'plate' = 'network'): Sheet {
  const name = (i: number, j: number) => `${i},${j}`;
  const stations: Record<string, [number, number]> = {};
  const readings: [string, string, number][] = [];
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      stations[name(i, j)] = [1000 * i, 1000 * j];
      if (i > 0) readings.push([name(i - 1, j), name(i, j), Math.sin(i * j)]);
      if (j > 0) readings.push([name(i, j - 1), name(i, j), Math.cos(i + j * j)]);
    }
  }
  const walks = [{ id: 'all', zero: 'known', sigma: 1, readings }];
  return sheetOf({ kind, stations, walks, gravityCurvature: 'off' });
}

/** How far the adjusted variance of the far corner, corner 0 held, is from the known one, relatively. */
export function farCornerError({ heights }: Adjustment, n: number): number {
  const corner = new Float64Array(n * n);
  corner[0] = 1;
  const last = n * n - 1;
  const variance =
    heights.varianceUm2[0]! + heights.varianceUm2[last]! - 2 * heights.covarianceWith(corner)[last]!;
  return Math.abs(variance / farCorner[n]! - 1);
}
