import type { Fronts } from './fronts.ts';
import { type Observations, rowWidth } from './observations.ts';

/** A·x − y by row; x by place in the order of elimination, y by row (0 when left out). */
export function rowsTimes(
  { count, coefficient }: Observations,
  { place }: Fronts,
  x: Float64Array,
  y?: Float64Array,
): Float64Array {
  const result = new Float64Array(count);
  for (let r = 0; r < count; r++) {
    let sum = y ? -y[r]! : 0;
    for (let i = rowWidth * r; i < rowWidth * (r + 1); i++) {
      if (place[i]! >= 0) sum += coefficient[i]! * x[place[i]!]!;
    }
    result[r] = sum;
  }
  return result;
}

/** −Aᵀ·y by place. */
export function minusTransposedTimes(
  { count, coefficient }: Observations,
  { place, start }: Fronts,
  y: Float64Array,
): Float64Array {
  const result = new Float64Array(start.at(-1)!);
  for (let r = 0; r < count; r++) {
    for (let i = rowWidth * r; i < rowWidth * (r + 1); i++) {
      if (place[i]! >= 0) result[place[i]!]! -= coefficient[i]! * y[r]!;
    }
  }
  return result;
}
