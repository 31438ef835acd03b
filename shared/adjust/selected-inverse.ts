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
      for (let j = pivots; j < size; j++) {
        block[origin + i * size + j] = block[from + borderInParent[edge + j]!]!;
      }
    }
  }

  /** Row k of the block from the rows below it, four at a time. */
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
      const z0 = origin + i * size;
      const z1 = z0 + size;
      const z2 = z1 + size;
      const z3 = z2 + size;
      const l0 = rows[stored + i]!;
      const l1 = rows[stored + i + 1]!;
      const l2 = rows[stored + i + 2]!;
      const l3 = rows[stored + i + 3]!;
      for (let j = k + 1; j < size; j++) {
        sum[j]! += l0 * block[z0 + j]! + l1 * block[z1 + j]! + l2 * block[z2 + j]! + l3 * block[z3 + j]!;
      }
    }
    for (; i < size; i++) {
      const l0 = rows[stored + i]!;
      for (let j = k + 1; j < size; j++) sum[j]! += l0 * block[origin + i * size + j]!;
    }
    let own = 0;
    for (let j = k + 1; j < size; j++) {
      const z = -inverse * sum[j]!;
      block[origin + k * size + j] = z;
      block[origin + j * size + k] = z;
      own += rows[stored + j]! * z;
    }
    block[origin + k * size + k] = inverse - inverse * own;
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
          total += coefficient[base + a]! * coefficient[base + b]! * block[origin + at[a]! * size + at[b]!]!;
        }
      }
      explained[row[r]!] = total;
    }
  }
}
