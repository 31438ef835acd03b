import type { AdjustedHeights } from '../adjust/adjusted.ts';

/**
 * A linear combination Σ weight·height of stations, sparse: `weights[i]` belongs to station index
 * `stations[i]`. Every figure is one of these, so every figure has an uncertainty.
 */
export interface Combination {
  readonly stations: ArrayLike<number>;
  readonly weights: ArrayLike<number>;
}

/** A rounding residue this far below the terms it is left from is zero, not a variance. */
const ROUNDING = 1e-12;

/** The value Σ weight·height in the unit of `heights` (times that of the weights). */
export function evaluate(combination: Combination, heights: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < combination.stations.length; i++) {
    sum += combination.weights[i]! * heights[combination.stations[i]!]!;
  }
  return sum;
}

/** Σ factor·part as one combination; a station may occur more than once in it. */
export function combine(...parts: readonly (readonly [factor: number, part: Combination])[]): Combination {
  const stations: number[] = [];
  const weights: number[] = [];
  for (const [factor, part] of parts) {
    if (factor === 0) continue;
    for (let i = 0; i < part.stations.length; i++) {
      stations.push(part.stations[i]!);
      weights.push(factor * part.weights[i]!);
    }
  }
  return { stations, weights };
}

/** The height of one station alone. */
export function single(station: number): Combination {
  return { stations: [station], weights: [1] };
}

/** The combination written out over all stations. */
export function dense(combination: Combination, size: number): Float64Array {
  const all = new Float64Array(size);
  for (let i = 0; i < combination.stations.length; i++) {
    const station = combination.stations[i]!;
    all[station] = all[station]! + combination.weights[i]!;
  }
  return all;
}

/** √(cᵀQc): the standard uncertainty of the combination c, in µm where its weights are plain numbers. */
export function standardUncertainty(adjusted: AdjustedHeights, combination: Combination): number {
  const c = dense(combination, adjusted.names.length);
  const qc = adjusted.covarianceWith(c);
  let variance = 0;
  let magnitude = 0;
  for (let i = 0; i < c.length; i++) {
    const term = c[i]! * qc[i]!;
    variance += term;
    magnitude += Math.abs(term);
  }
  return rootOfVariance(variance, magnitude);
}

/** Root of a variance left over from terms of the size `magnitude`; what is only rounding gives zero. */
export function rootOfVariance(variance: number, magnitude: number): number {
  return variance > ROUNDING * magnitude ? Math.sqrt(variance) : 0;
}
