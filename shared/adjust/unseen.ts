import type { Factor } from './factor.ts';
import { minusTransposedTimes, rowsTimes } from './normal.ts';
import type { Observations } from './observations.ts';
import { solveInPlace } from './solve.ts';

/**
 * A change of all unknowns that no reading notices, by place: the given held unknowns change by `amounts`
 * and the others follow.
 */
export function unseenChange(
  observations: Observations,
  factor: Factor,
  held: readonly number[],
  amounts: readonly number[],
): Float64Array {
  const change = new Float64Array(factor.inversePivot.length);
  held.forEach((place, k) => {
    change[place] = amounts[k]!;
  });
  // Twice: the second time takes off what rounding left of the first.
  for (let round = 0; round < 2; round++) {
    const step = minusTransposedTimes(
      observations,
      factor.fronts,
      rowsTimes(observations, factor.fronts, change),
    );
    solveInPlace(factor, step);
    for (let k = 0; k < step.length; k++) change[k]! += step[k]!;
  }
  return change;
}

/**
 * One such change that mixes all held unknowns in unlike amounts: what it leaves in peace, every unseen
 * change leaves in peace, so a single one stands for all of them.
 */
export function mixedUnseenChange(observations: Observations, factor: Factor): Float64Array {
  const amounts = factor.held.map((_, k) => 1 + ((k * 0.618_033_988_749_895) % 1));
  return unseenChange(observations, factor, factor.held, amounts);
}

/**
 * Takes out of `values` their least-squares constant, or plane, over the plan, separately in each part.
 * What is left is what `values` are beyond a constant or plane.
 */
export function beyondPlane(
  values: Float64Array,
  { xMm, yMm }: Pick<Observations, 'xMm' | 'yMm'>,
  parts: Int32Array,
  shape: 'constant' | 'plane',
): Float64Array {
  const left = values.slice();
  const members = Array.from({ length: Math.max(...new Set(parts)) + 1 }, (): number[] => []);
  parts.forEach((part, k) => {
    members[part]!.push(k);
  });
  for (const stations of members) {
    const basis = planeBasis(stations, xMm, yMm, shape);
    for (const vector of basis) {
      let dot = 0;
      stations.forEach((k, i) => {
        dot += left[k]! * vector[i]!;
      });
      stations.forEach((k, i) => {
        left[k]! -= dot * vector[i]!;
      });
    }
  }
  return left;
}

/** Orthonormal vectors that span 1, x and y over the stations; those that add nothing are left out. */
function planeBasis(
  stations: readonly number[],
  xMm: Float64Array,
  yMm: Float64Array,
  shape: 'constant' | 'plane',
): Float64Array[] {
  const columns = [Float64Array.from(stations, () => 1)];
  if (shape === 'plane') {
    columns.push(
      Float64Array.from(stations, (k) => xMm[k]!),
      Float64Array.from(stations, (k) => yMm[k]!),
    );
  }
  const lengths = columns.map((column) => Math.sqrt(column.reduce((sum, value) => sum + value * value, 0)));
  const basis: Float64Array[] = [];
  columns.forEach((column, index) => {
    // Twice is enough: the second round takes off what rounding left of the first.
    for (const vector of [...basis, ...basis]) {
      const dot = column.reduce((sum, value, i) => sum + value * vector[i]!, 0);
      column.forEach((value, i) => {
        column[i] = value - dot * vector[i]!;
      });
    }
    const norm = Math.sqrt(column.reduce((sum, value) => sum + value * value, 0));
    if (norm <= 1e-9 * lengths[index]!) return;
    basis.push(column.map((value) => value / norm));
  });
  return basis;
}
