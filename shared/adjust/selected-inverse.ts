import type { Factor } from './factor.ts';
import { NumberStack } from './number-stack.ts';
import { type Observations, rowWidth } from './observations.ts';

export interface SelectedInverse {
  /** Variance of each unknown, by place; 0 for held unknowns. */
  readonly variance: Float64Array;
  /** a·Q·aᵀ of each row of observations: the share of its variance that the adjusted value keeps. */
  readonly explained: Float64Array;
}

/**
 * The entries of Q = N⁻¹ that are needed and no others: every variance, and the covariances of unknowns
 * that share a reading. From the root to the leaves, each front's block of Q follows from its parent's
 * (Takahashi, Fagan and Chin 1973): Z = D⁻¹ − (Lᵀ − I)·Z, row by row from the last pivot up.
 */
export function selectedInverse(observations: Observations, factor: Factor): SelectedInverse {
  const { fronts, rows, inversePivot } = factor;
  const { count, start, parent, borderStart, border, borderInParent, rowStart, row, place, storeStart } =
    fronts;
  const { coefficient } = observations;
  const variance = new Float64Array(inversePivot.length);
  const explained = new Float64Array(observations.count);
  const blocks = new NumberStack(2 * fronts.largest * fronts.largest);
  const blockStart = new Float64Array(count);
  const local = new Int32Array(inversePivot.length);
  const at = new Int32Array(rowWidth);
  const sum = new Float64Array(fronts.largest);

  for (let f = count - 1; f >= 0; f--) {
    const first = start[f]!;
    const pivots = start[f + 1]! - first;
    const size = sizeOf(f);
    const up = parent[f]!;
    // What lies on the stack above the parent's block belongs to its other children, and is done with.
    if (up >= 0) blocks.dropTo(blockStart[up]! + sizeOf(up) ** 2);
    const origin = blocks.push(size * size);
    blockStart[f] = origin;
    const block = blocks.numbers;
    if (up >= 0) copyBorder(f, block, origin, pivots, size);
    for (let k = pivots - 1; k >= 0; k--)
      pivotRow(block, origin, k, size, storeStart[f]! + k * size, first + k);
    for (let k = 0; k < pivots; k++) variance[first + k] = block[origin + k * size + k]!;
    explainRows(f, block, origin, pivots, size);
  }
  return { variance, explained };

  function sizeOf(f: number): number {
    return start[f + 1]! - start[f]! + borderStart[f + 1]! - borderStart[f]!;
  }

  function copyBorder(f: number, block: Float64Array, origin: number, pivots: number, size: number): void {
    const above = blockStart[parent[f]!]!;
    const aboveSize = sizeOf(parent[f]!);
    const edge = borderStart[f]! - pivots;
    for (let i = pivots; i < size; i++) {
      const from = above + borderInParent[edge + i]! * aboveSize;
      for (let j = i; j < size; j++) {
        block[origin + i * size + j] = block[from + borderInParent[edge + j]!]!;
      }
    }
  }

  /**
   * Row k of the block from the rows below it. The block is symmetric and only its upper triangle is kept,
   * so every entry serves for its row and for its column; four rows at a time spare the memory.
   */
  function pivotRow(
    block: Float64Array,
    origin: number,
    k: number,
    size: number,
    stored: number,
    pivot: number,
  ): void {
    const inverse = inversePivot[pivot]!;
    sum.fill(0, k + 1, size);
    let i = k + 1;
    for (; i + 3 < size; i += 4) {
      addTriangle(block, origin, i, 4, size, stored);
      const z0 = origin + i * size;
      const z1 = z0 + size;
      const z2 = z1 + size;
      const z3 = z2 + size;
      const l0 = rows[stored + i]!;
      const l1 = rows[stored + i + 1]!;
      const l2 = rows[stored + i + 2]!;
      const l3 = rows[stored + i + 3]!;
      let s0 = 0;
      let s1 = 0;
      let s2 = 0;
      let s3 = 0;
      for (let j = i + 4; j < size; j++) {
        const l = rows[stored + j]!;
        const a = block[z0 + j]!;
        const b = block[z1 + j]!;
        const c = block[z2 + j]!;
        const d = block[z3 + j]!;
        sum[j]! += l0 * a + l1 * b + l2 * c + l3 * d;
        s0 += l * a;
        s1 += l * b;
        s2 += l * c;
        s3 += l * d;
      }
      sum[i]! += s0;
      sum[i + 1]! += s1;
      sum[i + 2]! += s2;
      sum[i + 3]! += s3;
    }
    addTriangle(block, origin, i, size - i, size, stored);
    let own = 0;
    for (let j = k + 1; j < size; j++) {
      const z = -inverse * sum[j]!;
      block[origin + k * size + j] = z;
      own += rows[stored + j]! * z;
    }
    block[origin + k * size + k] = inverse - inverse * own;
  }

  /** The part of the sums that the few rows from i on have among themselves. */
  function addTriangle(
    block: Float64Array,
    origin: number,
    i: number,
    width: number,
    size: number,
    stored: number,
  ): void {
    for (let a = i; a < i + width; a++) {
      const row = origin + a * size;
      sum[a]! += rows[stored + a]! * block[row + a]!;
      for (let b = a + 1; b < i + width; b++) {
        const z = block[row + b]!;
        sum[a]! += rows[stored + b]! * z;
        sum[b]! += rows[stored + a]! * z;
      }
    }
  }

  function explainRows(f: number, block: Float64Array, origin: number, pivots: number, size: number): void {
    for (let k = 0; k < pivots; k++) local[start[f]! + k] = k;
    for (let i = borderStart[f]!; i < borderStart[f + 1]!; i++) {
      local[border[i]!] = pivots + i - borderStart[f]!;
    }
    for (let r = rowStart[f]!; r < rowStart[f + 1]!; r++) {
      const base = rowWidth * row[r]!;
      for (let a = 0; a < rowWidth; a++) at[a] = place[base + a]! < 0 ? -1 : local[place[base + a]!]!;
      let total = 0;
      for (let a = 0; a < rowWidth; a++) {
        if (at[a]! < 0) continue;
        for (let b = 0; b < rowWidth; b++) {
          if (at[b]! < 0) continue;
          const z = at[a]! < at[b]! ? at[a]! * size + at[b]! : at[b]! * size + at[a]!;
          total += coefficient[base + a]! * coefficient[base + b]! * block[origin + z]!;
        }
      }
      explained[row[r]!] = total;
    }
  }
}
