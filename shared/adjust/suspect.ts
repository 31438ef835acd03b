/** A reading with a standardised residual beyond this (two-sided 0.1 %) is suspect. */
const suspectLimit = 3.29;
/** Below this redundancy a reading counts as unchecked. */
export const uncheckedRedundancy = 0.05;
/** A smaller redundancy is rounding: nothing checks the reading. */
const noRedundancy = 1e-9;
/** A redundancy is only known to about 1e-6 among readings of very unlike weight: one below has no standardised residual. */
const leastRedundancy = 1e-6;

/** Redundancy of each reading from the share of its variance that the adjusted value keeps. */
export function redundancyOf(explained: Float64Array): Float64Array {
  return explained.map((share) => (1 - share < noRedundancy ? 0 : 1 - share));
}

/**
 * Residuals over their own standard deviation; all 0 where the readings agree but for rounding, NaN where nothing
 * checks the reading.
 */
export function standardise(
  misfit: Float64Array,
  redundancy: Float64Array,
  scale: number,
  observed: Float64Array,
): Float64Array {
  const largest = observed.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  const rounding = 1e-12 * largest;
  const exact = misfit.every((v) => Math.abs(v) <= rounding);
  return misfit.map((v, r) => {
    if (redundancy[r]! < leastRedundancy) return Number.NaN;
    return exact ? 0 : v / (Math.sqrt(redundancy[r]!) * scale);
  });
}

/** The row of largest standardised residual, where it is beyond the limit (-1: none), and its equals. */
export function findSuspect(standardised: Float64Array): { suspect: number; suspectTies: number[] } {
  let worst = 0;
  for (const w of standardised) if (Math.abs(w) > worst) worst = Math.abs(w);
  if (!(worst > suspectLimit)) return { suspect: -1, suspectTies: [] };
  const rows: number[] = [];
  // Readings that check only one another share one |w|; rounding must not choose between them.
  standardised.forEach((w, row) => {
    if (Math.abs(w) >= worst * (1 - 1e-7)) rows.push(row);
  });
  return { suspect: rows[0]!, suspectTies: rows.slice(1) };
}
