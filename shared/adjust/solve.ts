import type { Factor } from './factor.ts';

/**
 * Solves N·x = b in place, b by place in the order of elimination. Held unknowns come out as 0, which for
 * a consistent b is one of the solutions that the readings allow.
 */
export function solveInPlace({ fronts, rows, inversePivot }: Factor, b: Float64Array): void {
  const { count, start, borderStart, border, storeStart } = fronts;
  for (let f = 0; f < count; f++) {
    const first = start[f]!;
    const pivots = start[f + 1]! - first;
    const size = pivots + borderStart[f + 1]! - borderStart[f]!;
    const edge = borderStart[f]! - pivots;
    for (let k = 0; k < pivots; k++) {
      const row = storeStart[f]! + k * size;
      const scaled = b[first + k]! * inversePivot[first + k]!;
      b[first + k] = scaled;
      if (scaled === 0) continue;
      for (let j = k + 1; j < pivots; j++) b[first + j]! -= rows[row + j]! * scaled;
      for (let j = pivots; j < size; j++) b[border[edge + j]!]! -= rows[row + j]! * scaled;
    }
  }
  for (let f = count - 1; f >= 0; f--) {
    const first = start[f]!;
    const pivots = start[f + 1]! - first;
    const size = pivots + borderStart[f + 1]! - borderStart[f]!;
    const edge = borderStart[f]! - pivots;
    for (let k = pivots - 1; k >= 0; k--) {
      const row = storeStart[f]! + k * size;
      let sum = 0;
      for (let j = k + 1; j < pivots; j++) sum += rows[row + j]! * b[first + j]!;
      for (let j = pivots; j < size; j++) sum += rows[row + j]! * b[border[edge + j]!]!;
      b[first + k]! -= sum * inversePivot[first + k]!;
    }
  }
}
