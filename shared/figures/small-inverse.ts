/**
 * Inverse of a small square matrix (row by row) by Gauss–Jordan elimination with row pivoting, or
 * undefined where it is singular.
 */
export function smallInverse(matrix: readonly (readonly number[])[]): number[][] | undefined {
  const size = matrix.length;
  const rows = matrix.map((row, i) => [...row, ...row.map((_, j) => (i === j ? 1 : 0))]);
  for (let column = 0; column < size; column++) {
    let pivot = column;
    for (let i = column + 1; i < size; i++) {
      if (Math.abs(rows[i]![column]!) > Math.abs(rows[pivot]![column]!)) pivot = i;
    }
    [rows[column], rows[pivot]] = [rows[pivot]!, rows[column]!];
    const top = rows[column]!;
    const divisor = top[column]!;
    if (divisor === 0) return undefined;
    for (let j = 0; j < 2 * size; j++) top[j] = top[j]! / divisor;
    for (let i = 0; i < size; i++) {
      const factor = rows[i]![column]!;
      if (i === column || factor === 0) continue;
      for (let j = 0; j < 2 * size; j++) rows[i]![j] = rows[i]![j]! - factor * top[j]!;
    }
  }
  return rows.map((row) => row.slice(size));
}
