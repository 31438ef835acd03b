import type { Sheet } from '../sheet/schema.ts';
import { chiSquareOk } from './chi-square.ts';
import type { Observations } from './observations.ts';

/** With fewer degrees of freedom, s0 says too little to scale by. */
export const leastFreedomToScale = 4;

/** How well the readings fit together. */
export interface Fit {
  readonly observations: number;
  readonly unknowns: number;
  readonly datumDefect: number;
  readonly degreesOfFreedom: number;
  readonly s0: number | null;
  readonly chiSquareOk: boolean | null;
  readonly sigmaScaled: boolean;
}

/**
 * The fit from the misfit of each row (adjusted less observed, over sigma). The uncertainties are scaled by
 * s0 when every sigma was only assumed and enough is left over to tell; known ones are never scaled.
 */
export function fitOf(
  sheet: Sheet,
  observations: Observations,
  datumDefect: number,
  misfit: Float64Array,
): Fit {
  const unknowns = observations.stationNames.length + observations.nuisances.length;
  const degreesOfFreedom = observations.count - unknowns + datumDefect;
  const sumOfSquares = misfit.reduce((sum, v) => sum + v * v, 0);
  const groups = [...sheet.walks, ...sheet.sweeps];
  const assumed = observations.group.every((group) => groups[group]!.sigma === undefined);
  const free = degreesOfFreedom > 0;
  const s0 = free ? Math.sqrt(sumOfSquares / degreesOfFreedom) : null;
  return {
    observations: observations.count,
    unknowns,
    datumDefect,
    degreesOfFreedom,
    s0,
    chiSquareOk: free ? chiSquareOk(sumOfSquares, degreesOfFreedom) : null,
    sigmaScaled: assumed && degreesOfFreedom >= leastFreedomToScale,
  };
}
