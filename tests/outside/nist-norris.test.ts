import { describe, expect, it } from 'vitest';
import { adjust } from '../../shared/adjust/adjust.ts';
import { sheetOf } from '../adjust/sheets.ts';

/**
 * NIST Statistical Reference Datasets, Norris: certified linear regression y = B0 + B1·x
 * (www.itl.nist.gov/div898/strd). An indicator sweep over metal that is known to be level has the same
 * unknowns: its offset is B0 and its slope B1.
 */
// biome-ignore format: pairs read better in rows
const yx: [y: number, x: number][] = [
  [0.1, 0.2], [338.8, 337.4], [118.1, 118.2], [888.0, 884.6], [9.2, 10.1], [228.1, 226.5],
  [668.5, 666.3], [998.5, 996.3], [449.1, 448.6], [778.9, 777.0], [559.2, 558.2], [0.3, 0.4],
  [0.1, 0.6], [778.1, 775.5], [668.8, 666.9], [339.3, 338.0], [448.9, 447.5], [10.8, 11.6],
  [557.7, 556.0], [228.3, 228.1], [998.0, 995.8], [888.8, 887.6], [119.6, 120.2], [0.3, 0.3],
  [0.6, 0.3], [557.6, 556.8], [339.3, 339.1], [888.0, 887.2], [998.5, 999.0], [778.9, 779.0],
  [10.2, 11.1], [117.6, 118.3], [228.9, 229.2], [668.4, 669.1], [449.2, 448.9], [0.2, 0.5],
];
const certified = {
  b0: -0.262323073774029,
  b1: 1.00211681802045,
  residualDeviation: 0.884796396144373,
  sumOfSquares: 26.6173985294224,
};

describe('the certified regression of Norris', () => {
  const origin = 'at 0';
  const adjusted = adjust(
    sheetOf({
      kind: 'network',
      stations: {
        [origin]: [0, 0],
        ...Object.fromEntries(yx.map(([, x], k): [string, [number, number]] => [`P${k}`, [x, 0]])),
      },
      sweeps: [
        {
          id: 'known level',
          offset: 'known',
          slope: 'known',
          sigma: 1e-9,
          readings: [[origin, 0], ...yx.map((_, k): [string, number] => [`P${k}`, 0])],
        },
        {
          id: 'regression',
          sigma: 1,
          // The slope runs from the sweep's first station; nothing was read there.
          readings: [[origin, null], ...yx.map(([y], k): [string, number] => [`P${k}`, y])],
        },
      ],
    }),
  );
  const fitted = yx.map(([y], k) => y + adjusted.residual[1 + yx.length + k]!);

  it('has its coefficients', () => {
    const [low, high] = [0, 28];
    const b1 = (fitted[high]! - fitted[low]!) / (yx[high]![1] - yx[low]![1]);
    expect(Math.abs(b1 / certified.b1 - 1)).toBeLessThan(1e-11);
    expect(Math.abs((fitted[low]! - b1 * yx[low]![1]) / certified.b0 - 1)).toBeLessThan(1e-9);
  });

  it('has its residual standard deviation and sum of squares', () => {
    const { s0, degreesOfFreedom } = adjusted.fit;
    expect(degreesOfFreedom).toBe(34);
    expect(Math.abs(s0! / certified.residualDeviation - 1)).toBeLessThan(1e-10);
    expect(Math.abs((s0! * s0! * degreesOfFreedom) / certified.sumOfSquares - 1)).toBeLessThan(1e-10);
  });
});
