/**
 * What an adjustment hands to the figures: adjusted heights of stations and a way to ask for covariances.
 *
 * Units: heights µm, plan coordinates mm, covariances µm². Sign: a positive height stands proud.
 * Heights are fixed only up to what the readings cannot see (a constant, a tilt, a plane), so only
 * differences that do not depend on it (departures from a reference line or plane) mean anything.
 */
export interface AdjustedHeights {
  /** Station names; every array below has one entry per station, in this order. */
  readonly names: readonly string[];
  readonly xMm: Float64Array;
  readonly yMm: Float64Array;
  readonly heightUm: Float64Array;
  /** Variance of each height in the datum in use, µm². */
  readonly varianceUm2: Float64Array;
  /**
   * Q·c: the covariance of every station's height with the linear combination Σ c_j·h_j, µm².
   * Costs one solve with the factor at hand. The scaling by s0, where it applies, is already in.
   */
  covarianceWith(c: Float64Array): Float64Array;
}
