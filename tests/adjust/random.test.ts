import fc from 'fast-check';
import { Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { adjust } from '../../shared/adjust/adjust.ts';
import { isWayscribeError } from '../../shared/errors.ts';
import { type DenseFit, denseFit, withoutPlane } from './dense.ts';
import { randomSheet } from './random-sheet.ts';

const relative = 1e-9;

function close(actual: number, wanted: number, scale: number): void {
  expect(Math.abs(actual - wanted)).toBeLessThanOrEqual(relative * Math.max(Math.abs(wanted), scale));
}

/** How far the unseen heights are from a plane, as share of their size. */
function bend({ unseenHeights }: DenseFit, flatten: Matrix): number {
  return flatten.mmul(unseenHeights).norm() / Math.max(unseenHeights.norm(), 1e-3);
}

describe('the sparse adjustment against a dense one by singular values', () => {
  let determined = 0;
  let refused = 0;

  it('agrees on heights, uncertainties, residuals and redundancies, or on what is not determined', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 2 ** 31 }), (seed) => {
        const sheet = randomSheet(seed);
        const dense = denseFit(sheet);
        const flatten = withoutPlane(sheet);
        let sparse: ReturnType<typeof adjust>;
        try {
          sparse = adjust(sheet);
        } catch (error) {
          expect(isWayscribeError(error, 'adjust.notDetermined'), String(error)).toBe(true);
          expect(bend(dense, flatten)).toBeGreaterThan(1e-7);
          refused++;
          return;
        }
        determined++;
        expect(bend(dense, flatten)).toBeLessThan(1e-7);
        expect(sparse.fit.unknowns).toBe(dense.unknowns);
        expect(sparse.fit.datumDefect).toBe(dense.unknowns - dense.rank);

        const departures = (heights: ArrayLike<number>) =>
          flatten.mmul(Matrix.columnVector(Array.from(heights))).to1DArray();
        const wanted = departures(dense.heights);
        const most = Math.max(...wanted.map(Math.abs));
        departures(sparse.heights.heightUm).forEach((height, k) => {
          close(height, wanted[k]!, most);
        });

        const covariance = flatten.mmul(dense.covariance).mmul(flatten);
        const scale = sparse.fit.sigmaScaled ? sparse.fit.s0! : 1;
        const variances = covariance.diagonal().map((variance) => variance * scale * scale);
        flatten.to2DArray().forEach((weights, k) => {
          const column = sparse.heights.covarianceWith(Float64Array.from(weights));
          close(departures(column)[k]!, variances[k]!, Math.max(...variances));
        });

        const largest = Math.max(1, ...dense.residual.map(Math.abs));
        dense.residual.forEach((residual, row) => {
          close(sparse.residual[row]!, residual, largest);
        });
        dense.redundancy.forEach((redundancy, row) => {
          close(sparse.redundancy[row]!, redundancy, 1);
        });
        const { degreesOfFreedom, s0 } = sparse.fit;
        if (s0 !== null) close(s0 * s0 * degreesOfFreedom, dense.sumOfSquares, 1);
      }),
      { numRuns: 600, seed: 20_260 },
    );
    expect(determined).toBeGreaterThan(100);
    expect(refused).toBeGreaterThan(4);
  });
});
