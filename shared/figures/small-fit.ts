import { dot } from './area.ts';

/** Of a column's length: what is left of it beside the columns before it must be more to count as its own. */
const OWN = 1e-6;

/**
 * Least squares of `values` on a few columns by modified Gram–Schmidt. `share` is the part of the squared
 * values that the columns explain, 0 to 1; a column that those before it contain gets the factor 0.
 */
export function fitColumns(
  values: Float64Array,
  columns: readonly Float64Array[],
): { factors: number[]; share: number } {
  const axes: { column: number; axis: Float64Array; shares: number[]; size: number }[] = [];
  columns.forEach((values, column) => {
    const axis = values.slice();
    const shares = axes.map((earlier) => takeOut(axis, earlier.axis));
    const size = Math.sqrt(dot(axis, axis));
    if (size <= OWN * Math.sqrt(dot(values, values))) return;
    for (let k = 0; k < axis.length; k++) axis[k] = axis[k]! / size;
    axes.push({ column, axis, shares, size });
  });
  const rest = values.slice();
  const loads = axes.map(({ axis }) => takeOut(rest, axis));
  const factors = columns.map(() => 0);
  for (let i = axes.length - 1; i >= 0; i--) {
    let load = loads[i]!;
    for (let j = i + 1; j < axes.length; j++) load -= axes[j]!.shares[i]! * factors[axes[j]!.column]!;
    factors[axes[i]!.column] = load / axes[i]!.size;
  }
  const all = dot(values, values);
  return { factors, share: all > 0 ? 1 - dot(rest, rest) / all : 0 };
}

/** Takes the part along `axis` (of length 1) out of `values` and returns how much it was. */
function takeOut(values: Float64Array, axis: Float64Array): number {
  const share = dot(axis, values);
  for (let k = 0; k < values.length; k++) values[k] = values[k]! - share * axis[k]!;
  return share;
}
