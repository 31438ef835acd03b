import type { AdjustedHeights } from '../../shared/adjust/adjusted.ts';

/** Heights with a covariance matrix written out in full: what an adjustment would hand over, without one. */
export interface PlainSurvey {
  readonly xMm: readonly number[];
  readonly yMm?: readonly number[];
  readonly heightUm: readonly number[];
  /** Row by row; left out: independent heights of 1 µm standard deviation. */
  readonly covarianceUm2?: readonly (readonly number[])[];
  readonly names?: readonly string[];
}

export function adjustedHeights(survey: PlainSurvey): AdjustedHeights {
  const size = survey.xMm.length;
  const q = survey.covarianceUm2;
  return {
    names: survey.names ?? survey.xMm.map((_, k) => `F${k}`),
    xMm: Float64Array.from(survey.xMm),
    yMm: Float64Array.from(survey.yMm ?? survey.xMm.map(() => 0)),
    heightUm: Float64Array.from(survey.heightUm),
    varianceUm2: Float64Array.from({ length: size }, (_, k) => q?.[k]?.[k] ?? 1),
    covarianceWith: (c) =>
      q === undefined
        ? c.slice()
        : Float64Array.from(q, (row) => row.reduce((sum, value, j) => sum + value * c[j]!, 0)),
  };
}

/** 0, 1, 2 … size − 1. */
export function indices(size: number): number[] {
  return Array.from({ length: size }, (_, k) => k);
}

/** Covariance of the running sums of n independent rises of standard deviation `u`, from an exact 0. */
export function walkCovariance(steps: number, u: number): number[][] {
  return indices(steps + 1).map((i) => indices(steps + 1).map((j) => Math.min(i, j) * u * u));
}
