/** The last place of an ascending column whose value is not beyond `limit`; -1 when all are. */
export function lastNotBeyond(column: ArrayLike<number>, limit: number): number {
  let [low, high] = [0, column.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (column[middle]! <= limit) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}
