import type { Fronts } from './fronts.ts';
import { NumberStack } from './number-stack.ts';
import { type Observations, rowWidth } from './observations.ts';

/**
 * The factor N = L·D·Lᵀ of the normal matrix N = AᵀA, front by front.
 *
 * `rows` holds, per front, its pivot rows of D·Lᵀ over the whole front (row-major, `pivots × size`);
 * `inversePivot` holds 1/D by place, 0 for an unknown that the readings cannot see and that is held at 0.
 */
export interface Factor {
  readonly fronts: Fronts;
  readonly rows: Float64Array;
  readonly inversePivot: Float64Array;
  /** Places of the held unknowns: as many as the normal matrix lacks in rank. */
  readonly held: readonly number[];
}

/**
 * Factorises the normal matrix of the observations.
 *
 * Among heights alone the matrix is that of a graph: what a row sums to is what ties the station to known
 * heights (its ground), never negative, and stays so while heights are eliminated. As long as nothing but
 * heights was eliminated, a height's pivot is formed as its ground plus the ties that are left (Grassmann,
 * Taksar and Heyman 1985): nothing is subtracted and no digits are lost. Other pivots are formed as usual.
 *
 * @param rankTolerance a pivot that shrank below this share of the unknown's own weight is rounding: the
 * readings cannot tell the unknown from the earlier ones
 */
export function factorise(observations: Observations, fronts: Fronts, rankTolerance: number): Factor {
  const { count, start, firstBelow, borderStart, storeStart } = fronts;
  const rows = new Float64Array(storeStart[count]!);
  const inversePivot = new Float64Array(start[count]!);
  const weight = weightsOf(observations, fronts);
  const held: number[] = [];
  const work = new Float64Array(fronts.largest * fronts.largest);
  const updates = new NumberStack(work.length);
  const updateStart = new Float64Array(count);
  const assemble = assembler(observations, fronts);
  const ground = new Float64Array(fronts.largest);
  const isHeight = new Uint8Array(fronts.largest);
  const onlyHeights = new Uint8Array(count).fill(1);
  const heightAt = new Uint8Array(start[count]!);
  for (let k = 0; k < observations.stationNames.length; k++) heightAt[fronts.placeOf[k]!] = 1;

  for (let f = 0; f < count; f++) {
    const pivots = start[f + 1]! - start[f]!;
    const size = pivots + borderStart[f + 1]! - borderStart[f]!;
    work.fill(0, 0, size * size);
    ground.fill(0, 0, size);
    for (let k = 0; k < size; k++) isHeight[k] = heightAt[placeIn(f, k, pivots)]!;
    assemble(f, work, size, ground, isHeight);
    // A front follows its children, whose updates lie on the top of the stack, the last child's uppermost.
    for (let child = f - 1; child >= firstBelow[f]!; child = firstBelow[child]! - 1) {
      addUpdate(work, size, ground, updates.numbers, updateStart[child]!, child, fronts);
      onlyHeights[f]! &= onlyHeights[child]!;
      updates.dropTo(updateStart[child]!);
    }
    eliminate(f, pivots, size);
    rows.set(work.subarray(0, pivots * size), storeStart[f]!);
    updateStart[f] = updates.push((size - pivots) * (size - pivots + 1));
    copyBorder(work, pivots, size, ground, updates.numbers, updateStart[f]!);
  }
  return { fronts, rows, inversePivot, held };

  /** Brings the upper triangle of the front to D·Lᵀ (pivot rows) and the update for the parent (the rest). */
  function eliminate(f: number, pivots: number, size: number): void {
    const first = start[f]!;
    for (let i = 0; i < size; i++) {
      const row = i * size;
      subtractEarlier(row, i, Math.min(i, pivots), size, first);
      if (i >= pivots) continue;
      onlyHeights[f]! &= isHeight[i]!;
      const asGraph = onlyHeights[f] === 1;
      const pivot = asGraph ? tiesOf(i, size) : work[row + i]!;
      if (pivot > (asGraph ? 0 : rankTolerance * weight[first + i]!)) {
        inversePivot[first + i] = 1 / pivot;
        if (asGraph) passGround(i, size, 1 / pivot);
      } else {
        held.push(first + i);
        work.fill(0, row + i, row + size);
      }
    }
  }

  function placeIn(f: number, k: number, pivots: number): number {
    return k < pivots ? start[f]! + k : fronts.border[borderStart[f]! + k - pivots]!;
  }

  /** A height's ground and its ties to the heights that are left. */
  function tiesOf(i: number, size: number): number {
    let sum = ground[i]!;
    for (let j = i + 1; j < size; j++) if (isHeight[j] === 1) sum -= work[i * size + j]!;
    return sum;
  }

  /** What is tied to an eliminated height is tied to its ground through it. */
  function passGround(i: number, size: number, inverse: number): void {
    const share = ground[i]! * inverse;
    if (share === 0) return;
    for (let j = i + 1; j < size; j++) if (isHeight[j] === 1) ground[j]! -= work[i * size + j]! * share;
  }

  /** row i −= Σ over earlier pivots p of (L_ip)·(row p), four pivots at a time. */
  function subtractEarlier(row: number, i: number, end: number, size: number, first: number): void {
    let p = 0;
    for (; p + 3 < end; p += 4) {
      const r0 = p * size;
      const r1 = r0 + size;
      const r2 = r1 + size;
      const r3 = r2 + size;
      const l0 = work[r0 + i]! * inversePivot[first + p]!;
      const l1 = work[r1 + i]! * inversePivot[first + p + 1]!;
      const l2 = work[r2 + i]! * inversePivot[first + p + 2]!;
      const l3 = work[r3 + i]! * inversePivot[first + p + 3]!;
      if (l0 === 0 && l1 === 0 && l2 === 0 && l3 === 0) continue;
      for (let j = i; j < size; j++) {
        work[row + j]! -= l0 * work[r0 + j]! + l1 * work[r1 + j]! + l2 * work[r2 + j]! + l3 * work[r3 + j]!;
      }
    }
    for (; p < end; p++) {
      const r0 = p * size;
      const l0 = work[r0 + i]! * inversePivot[first + p]!;
      if (l0 === 0) continue;
      for (let j = i; j < size; j++) work[row + j]! -= l0 * work[r0 + j]!;
    }
  }
}

/** Diagonal of the normal matrix by place: the weight with which the readings see each unknown. */
function weightsOf({ count, coefficient }: Observations, { place, start }: Fronts): Float64Array {
  const weight = new Float64Array(start.at(-1)!);
  for (let i = 0; i < rowWidth * count; i++) {
    if (place[i]! >= 0) weight[place[i]!]! += coefficient[i]! * coefficient[i]!;
  }
  return weight;
}

/** A function that adds the products of the coefficients of a front's own rows to its upper triangle. */
function assembler({ coefficient }: Observations, fronts: Fronts) {
  const { start, borderStart, border, rowStart, row, place } = fronts;
  const local = new Int32Array(start.at(-1)!);
  const at = new Int32Array(rowWidth);
  return (f: number, work: Float64Array, size: number, ground: Float64Array, isHeight: Uint8Array): void => {
    const pivots = start[f + 1]! - start[f]!;
    for (let k = 0; k < pivots; k++) local[start[f]! + k] = k;
    for (let i = borderStart[f]!; i < borderStart[f + 1]!; i++) {
      local[border[i]!] = pivots + i - borderStart[f]!;
    }
    for (let r = rowStart[f]!; r < rowStart[f + 1]!; r++) {
      const base = rowWidth * row[r]!;
      for (let a = 0; a < rowWidth; a++) at[a] = place[base + a]! < 0 ? -1 : local[place[base + a]!]!;
      let heights = 0;
      for (let a = 0; a < rowWidth; a++) {
        if (at[a]! >= 0 && isHeight[at[a]!] === 1) heights += coefficient[base + a]!;
      }
      for (let a = 0; a < rowWidth; a++) {
        if (at[a]! < 0) continue;
        if (isHeight[at[a]!] === 1) ground[at[a]!]! += coefficient[base + a]! * heights;
        for (let b = a; b < rowWidth; b++) {
          if (at[b]! < 0) continue;
          const [low, high] = at[a]! < at[b]! ? [at[a]!, at[b]!] : [at[b]!, at[a]!];
          work[low * size + high]! += coefficient[base + a]! * coefficient[base + b]!;
        }
      }
    }
  };
}

/** Adds a child's update (square, upper triangle, then ground) to its parent's front; both run in the same order. */
function addUpdate(
  work: Float64Array,
  size: number,
  ground: Float64Array,
  updates: Float64Array,
  start: number,
  child: number,
  { borderStart, borderInParent }: Fronts,
): void {
  const from = borderStart[child]!;
  const width = borderStart[child + 1]! - from;
  for (let i = 0; i < width; i++) {
    ground[borderInParent[from + i]!]! += updates[start + width * width + i]!;
    const row = borderInParent[from + i]! * size;
    const update = start + i * width;
    for (let j = i; j < width; j++) work[row + borderInParent[from + j]!]! += updates[update + j]!;
  }
}

/** The upper triangle of a front's border block, as a square of its own, and the ground of the border. */
function copyBorder(
  work: Float64Array,
  pivots: number,
  size: number,
  ground: Float64Array,
  updates: Float64Array,
  start: number,
): void {
  const width = size - pivots;
  for (let i = 0; i < width; i++) {
    updates[start + width * width + i] = ground[pivots + i]!;
    const row = (pivots + i) * size;
    for (let j = i; j < width; j++) updates[start + i * width + j] = work[row + pivots + j]!;
  }
}
