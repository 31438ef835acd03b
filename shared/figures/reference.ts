import type { AdjustedHeights } from '../adjust/adjusted.ts';
import {
  type Combination,
  combine,
  dense,
  evaluate,
  rootOfVariance,
  single,
  standardUncertainty,
} from './combination.ts';

/** The lines and planes that heights can be shown against. */
export type ReferenceKind = 'ends' | 'leastSquares' | 'minimumZone';

export const referenceKinds = ['ends', 'leastSquares', 'minimumZone'] as const satisfies ReferenceKind[];

/**
 * A reference line or plane that is itself made of the heights: its height at `stations[i]` is
 * Σ_j basis[j][i]·parameter_j, and every parameter is a linear combination of heights.
 */
export interface Reference {
  readonly stations: ArrayLike<number>;
  readonly basis: readonly Float64Array[];
  readonly parameters: readonly Combination[];
}

/** Departures from a reference, µm, plus = proud of it, in the order of its stations; u one standard deviation. */
export interface Departures {
  readonly heightUm: Float64Array;
  readonly uUm: Float64Array;
}

/** The greatest minus the least departure and the two stations (indices) that define it. */
export interface Range {
  readonly valueUm: number;
  readonly uUm: number;
  readonly highest: number;
  readonly lowest: number;
}

/** Values nearer to an extreme than this part of the spread are level with it: the first is named. */
const LEVEL = 1e-10;
/** What rounding leaves of the values themselves. */
const ROUNDING = 1e-15;

/** Heights relative to the reference, µm. */
export function departureHeights(adjusted: AdjustedHeights, reference: Reference): Float64Array {
  const { stations, basis } = reference;
  const values = reference.parameters.map((parameter) => evaluate(parameter, adjusted.heightUm));
  const heights = new Float64Array(stations.length);
  for (let i = 0; i < heights.length; i++) {
    let height = adjusted.heightUm[stations[i]!]!;
    for (let j = 0; j < values.length; j++) height -= basis[j]![i]! * values[j]!;
    heights[i] = height;
  }
  return heights;
}

/**
 * Heights and standard uncertainties relative to the reference. With d = h − B·W·h the variance is
 * Q_kk − 2·b_k·(Q·Wᵀ)_k + b_k·(W·Q·Wᵀ)·b_k: one solve for each parameter, however many stations.
 */
export function departuresFrom(adjusted: AdjustedHeights, reference: Reference): Departures {
  const { stations, basis, parameters } = reference;
  const size = adjusted.names.length;
  const covariances = parameters.map((parameter) => adjusted.covarianceWith(dense(parameter, size)));
  const between = parameters.map((parameter) => covariances.map((column) => evaluate(parameter, column)));
  const uUm = new Float64Array(stations.length);
  for (let i = 0; i < uUm.length; i++) {
    const station = stations[i]!;
    let variance = adjusted.varianceUm2[station]!;
    let magnitude = variance;
    for (let j = 0; j < parameters.length; j++) {
      const b = basis[j]![i]!;
      let term = -2 * b * covariances[j]![station]!;
      magnitude += Math.abs(term);
      variance += term;
      for (let k = 0; k < parameters.length; k++) {
        term = b * basis[k]![i]! * between[j]![k]!;
        magnitude += Math.abs(term);
        variance += term;
      }
    }
    uUm[i] = rootOfVariance(variance, magnitude);
  }
  return { heightUm: departureHeights(adjusted, reference), uUm };
}

/** The departure of the i-th station of the reference as a combination of heights. */
export function departureCombination(reference: Reference, i: number): Combination {
  return combine(
    [1, single(reference.stations[i]!)],
    ...reference.parameters.map((parameter, j) => [-reference.basis[j]![i]!, parameter] as const),
  );
}

/** Positions of the greatest and the least value; among values level but for rounding, the first. */
export function extremesOf(values: ArrayLike<number>): { highest: number; lowest: number } {
  let high = Number.NEGATIVE_INFINITY;
  let low = Number.POSITIVE_INFINITY;
  for (let i = 0; i < values.length; i++) {
    high = Math.max(high, values[i]!);
    low = Math.min(low, values[i]!);
  }
  const level = LEVEL * (high - low) + ROUNDING * Math.max(Math.abs(high), Math.abs(low));
  let highest = 0;
  let lowest = 0;
  for (let i = values.length - 1; i >= 0; i--) {
    if (values[i]! >= high - level) highest = i;
    if (values[i]! <= low + level) lowest = i;
  }
  return { highest, lowest };
}

/** Greatest minus least departure, its uncertainty carried through the two stations that define it. */
export function rangeFrom(adjusted: AdjustedHeights, reference: Reference): Range {
  const heights = departureHeights(adjusted, reference);
  const { highest, lowest } = extremesOf(heights);
  const difference = combine(
    [1, single(reference.stations[highest]!)],
    [-1, single(reference.stations[lowest]!)],
    ...reference.parameters.map(
      (parameter, j) => [reference.basis[j]![lowest]! - reference.basis[j]![highest]!, parameter] as const,
    ),
  );
  return {
    valueUm: heights[highest]! - heights[lowest]!,
    uUm: highest === lowest ? 0 : standardUncertainty(adjusted, difference),
    highest: reference.stations[highest]!,
    lowest: reference.stations[lowest]!,
  };
}
