/**
 * Least squares of `values` on a constant and the given columns (one or two), with the standard uncertainty of each
 * coefficient from the scatter that is left (`perSigma`: for values of standard deviation 1). Columns that say the same give an endless uncertainty.
 */
export function polynomial(
  columns: readonly (readonly number[])[],
  values: readonly number[],
): { coefficients: number[]; u: number[]; perSigma: number[] } {
  const n = values.length;
  const centred = columns.map(withoutMean);
  const y = withoutMean(values);
  // Each column freed of the others, so that each coefficient stands alone.
  const free = centred.map((column, k) =>
    centred.reduce((left, other, j) => (j === k ? left : without(left, other)), column),
  );
  const norms = free.map((column) => dot(column, column));
  const coefficients = free.map((column, k) => (norms[k]! > 0 ? dot(column, y) / norms[k]! : 0));
  const rest = y.map(
    (value, i) => value - centred.reduce((sum, column, k) => sum + coefficients[k]! * column[i]!, 0),
  );
  const variance = dot(rest, rest) / Math.max(1, n - 1 - columns.length);
  const perSigma = norms.map((norm) => (norm > 0 ? 1 / Math.sqrt(norm) : Number.POSITIVE_INFINITY));
  return { coefficients, u: perSigma.map((per) => per * Math.sqrt(variance)), perSigma };
}

function withoutMean(values: readonly number[]): number[] {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return values.map((value) => value - mean);
}

function without(values: readonly number[], column: readonly number[]): number[] {
  const norm = dot(column, column);
  if (norm === 0) return [...values];
  const share = dot(values, column) / norm;
  return values.map((value, k) => value - share * column[k]!);
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, value, k) => sum + value * b[k]!, 0);
}
