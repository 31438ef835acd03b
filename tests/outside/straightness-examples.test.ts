import { describe, expect, test } from 'vitest';
import { handColumns } from '../../shared/figures/hand-columns.ts';
import { lineOf } from '../../shared/figures/line.ts';
import { lineFigures } from '../../shared/figures/line-figures.ts';
import { lineReference } from '../../shared/figures/line-reference.ts';
import { departureHeights, type ReferenceKind } from '../../shared/figures/reference.ts';
import { adjustedHeights, indices } from '../tools/adjusted-heights.ts';
import { expectClose } from '../tools/expect-close.ts';

const ARC_SECOND_UM_PER_M = (Math.PI / 648_000) * 1e6;

function survey(xMm: number[], heightUm: number[]) {
  const adjusted = adjustedHeights({ xMm, heightUm });
  const line = lineOf(adjusted, indices(xMm.length));
  return {
    departures: (kind: ReferenceKind) => [...departureHeights(adjusted, lineReference(kind, line))],
    straightness: (kind: ReferenceKind) => lineFigures(adjusted, line, kind).straightness[kind],
    shape: lineFigures(adjusted, line, 'ends').shape,
  };
}

/** Angles from their first one, times `umPerUnit`, summed: heights of n + 1 stations. */
function runningSum(angles: number[], umPerUnit: number): number[] {
  const heights = [0];
  for (const angle of angles) heights.push(heights.at(-1)! + (angle - angles[0]!) * umPerUnit);
  return heights;
}

// Autocollimator, 8 steps of 110 mm. Virtual Labs, IIT Kharagpur: virtual-labs/
// exp-measurement-of-alignment-using-autocollimator-iitkgp, experiment/simulation/js/acm.js.
describe('autocollimator, 8 steps of 110 mm (Virtual Labs, IIT Kharagpur)', () => {
  const seconds = [761, 704.5, 663.5, 641.5, 631, 591.5, 543.5, 510.5];
  const xMm = indices(9).map((k) => 110 * k);
  const heights = runningSum(seconds, 0.5);

  test('published running sum', () => {
    expect(heights.slice(1)).toEqual([0, -28.25, -77, -136.75, -201.75, -286.5, -395.25, -520.5]);
  });

  test('departures from the line through the ends: the published step does not close', () => {
    // Published: adjustment −65.0312 a step, so the last "error" is 0.2504 and not 0. 520.5/8 = 65.0625.
    const publishedError = [-65.0312, -101.8124, -118.0936, -123.3748, -123.406, -103.6872, -59.9684, 0.2504];
    const right = [0, 65.0625, 101.875, 118.1875, 123.5, 123.5625, 103.875, 60.1875, 0];
    const { departures } = survey(xMm, heights);
    expectClose(departures('ends'), right, 9);
    // "Error" is adjustment − height: the sign is turned against height above the end line.
    expectClose(
      publishedError.map((error, k) => -error + (k + 1) * (65.0625 - 65.0312)),
      right.slice(1),
      3,
    );
  });

  test('three references', () => {
    const { straightness, departures, shape } = survey(xMm, heights);
    expect(straightness('ends').valueUm).toBeCloseTo(123.5625, 9);
    expect(straightness('leastSquares').valueUm).toBeCloseTo(124, 9);
    expect(straightness('minimumZone').valueUm).toBeCloseTo(123.5625, 9);
    expect(straightness('minimumZone').highest).toBe('F5');
    expect(shape).toBe('crown');
    expectClose(
      departures('leastSquares'),
      [-77.7111, -12.5611, 24.3389, 40.7389, 46.1389, 46.2889, 26.6889, -16.9111, -77.0111],
      4,
    );
  });

  test('0.5 µm a second belongs to 103 mm; on 110 mm it is 0.5333', () => {
    const factor = (110 * ARC_SECOND_UM_PER_M) / 1000;
    expect(factor).toBeCloseTo(0.5332950492, 9);
    const { straightness } = survey(xMm, runningSum(seconds, factor));
    expect(straightness('ends').valueUm).toBeCloseTo(131.7905, 4);
    expect(straightness('leastSquares').valueUm).toBeCloseTo(132.25717, 5);
    expect(straightness('minimumZone').valueUm).toBeCloseTo(131.790539, 6);
  });
});

// Autocollimator out and back, 100 mm base; lecture slides on metrology, coursehero.com/file/pgh1bs.
// The slides take the first row as the first station: 7 rows, 7 stations.
describe('autocollimator out and back, 100 mm base (lecture slides)', () => {
  const mean = [130, 130, 133, 137, 128, 130, 134];
  const xMm = indices(7).map((k) => 100 * k);

  test('published: 3 µm, with 0.5 µm a second', () => {
    const { departures, straightness } = survey(xMm, runningSum(mean.slice(1), 0.5));
    expectClose(departures('ends'), [0, -1, -0.5, 2, 0, -1, 0], 9);
    expect(straightness('ends').valueUm).toBeCloseTo(3, 9);
    expect(straightness('leastSquares').valueUm).toBeCloseTo(3.0357143, 6);
    expect(straightness('minimumZone').valueUm).toBeCloseTo(3, 9);
    expectClose(
      departures('leastSquares'),
      [0.125, -0.892857, -0.410714, 2.071429, 0.053571, -0.964286, 0.017857],
      6,
    );
  });

  test('with the true 0.4848 µm a second', () => {
    const { straightness } = survey(xMm, runningSum(mean.slice(1), ARC_SECOND_UM_PER_M / 10));
    expect(straightness('ends').valueUm).toBeCloseTo(2.9089, 4);
    expect(straightness('leastSquares').valueUm).toBeCloseTo(2.94351, 5);
    expect(straightness('minimumZone').valueUm).toBeCloseTo(2.908882, 6);
  });
});

// Frame level of 0.01 mm/1000 mm a division on a way of 1200 mm in steps of 200 mm; fitter examination,
// app.ixiawen.com/question/44391893. Published: 10 divisions, 0.02 mm.
describe('frame level, 6 steps of 200 mm (fitter examination)', () => {
  const divisions = [3, 6, -3, -1, -3, 4];
  const umPerDivision = 2;
  const xMm = indices(7).map((k) => 200 * k);
  const heights = runningSum([0, ...divisions], umPerDivision).slice(1);

  test('published columns, by hand columns', () => {
    const { rows, complete } = handColumns(
      divisions.map((division, k) => ({
        from: `F${k}`,
        to: `F${k + 1}`,
        readingUmPerM: 10 * division,
        baseMm: 200,
      })),
    );
    expect(complete).toBe(true);
    expectClose(
      rows.map((row) => row.heightUm / umPerDivision),
      [2, 7, 3, 1, -3, 0],
      9,
    );
  });

  test('three references: 20, 16.571 and 16.4 µm', () => {
    const { departures, straightness } = survey(xMm, heights);
    // One of the pages prints (10 × 0.01)/(1000 × 200), a misprint for 10 × 0.01/1000 × 200 = 0.02 mm.
    expect(straightness('ends').valueUm).toBeCloseTo(20, 9);
    expect(straightness('leastSquares').valueUm).toBeCloseTo(16.5714286, 6);
    expect(straightness('minimumZone').valueUm).toBeCloseTo(16.4, 9);
    expectClose(
      departures('leastSquares').map((d) => d / umPerDivision),
      [-3.142857, -0.571429, 5, 1.571429, 0.142857, -3.285714, 0.285714],
      6,
    );
    // touches at stations 0, 2 and 5: midway between them, half the zone on each side
    const zone = departures('minimumZone');
    expect([zone[0]!, zone[2]!, zone[5]!].map((d) => Math.round(d * 1e9) / 1e9)).toEqual([-8.2, 8.2, -8.2]);
  });
});

// studyx.ai/questions/4leb29s: five points, published end line 0.25x + 2 and 4.75, least-squares line 0.1x + 0.2.
describe('five points, three references (exercise)', () => {
  const { departures, straightness } = survey([0, 1, 2, 3, 4], [2, -1, 0, -2, 3]);

  test('end line as published', () => {
    expectClose(departures('ends'), [0, -3.25, -2.5, -4.75, 0], 9);
    expect(straightness('ends').valueUm).toBeCloseTo(4.75, 9);
  });

  test('least squares is wider than the end line here, the minimum zone never', () => {
    expectClose(departures('leastSquares'), [1.8, -1.3, -0.4, -2.5, 2.4], 9);
    expect(straightness('leastSquares').valueUm).toBeCloseTo(4.9, 9);
    expect(straightness('minimumZone').valueUm).toBeCloseTo(4.75, 9);
  });
});
