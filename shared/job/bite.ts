import type { AdjustedHeights } from '../adjust/adjusted.ts';
import { areaOf, at, dot } from '../figures/area.ts';
import { type Combination, standardUncertainty } from '../figures/combination.ts';
import { fitColumns } from '../figures/small-fit.ts';
import { commonStations } from './common-stations.ts';

/** What one pass really took off, by two surveys and the passes in between. */
export interface Bite {
  /** Mean bite of a pass, µm. */
  readonly biteUm: number;
  /** Its standard uncertainty, µm. */
  readonly uUm: number;
  /** Standard deviation of what came off a station about passes × bite, µm: the hand and the two surveys together. */
  readonly scatterUm: number;
  readonly stations: Readonly<Record<string, TakenOff>>;
}
export interface TakenOff {
  readonly passes: number;
  /** What came off by the two surveys, µm. */
  readonly takenUm: number;
}

/** Of the passes: what differs by less from a slope along the part cannot be told from the datum of the surveys. */
const TELLS = 1e-6;

/** How many of the passes covered each station. */
export function passesByStation(passes: readonly (readonly string[])[]): Map<string, number> {
  const count = new Map<string, number>();
  for (const names of passes) {
    for (const name of new Set(names)) count.set(name, (count.get(name) ?? 0) + 1);
  }
  return count;
}

/**
 * Least squares of the heights that came off, before − after = bite·passes + a + b·x (+ c·y): neither survey knows its
 * own height or tilt. The uncertainty is that of both surveys carried through, and that of the mean by the scatter
 * about the fit; as part of the scatter is that of the surveys, it is rather too large than too small.
 * Null where passes say nothing: the same everywhere, rising evenly along the part, or too few stations.
 */
export function biteBetween(
  before: AdjustedHeights,
  after: AdjustedHeights,
  passes: readonly (readonly string[])[],
): Bite | null {
  const common = commonStations(before, after, before.names);
  const indices = Int32Array.from(common, (each) => each.before);
  if (indices.length < 2) return null;
  const { uMm, vMm, extent } = areaOf(before, indices);
  const datum = [new Float64Array(indices.length).fill(1), uMm, ...(extent === 'plane' ? [vMm] : [])];
  const freedom = indices.length - datum.length - 1;
  if (freedom < 1) return null;

  const counted = passesByStation(passes);
  const count = Float64Array.from(common, ({ name }) => counted.get(name) ?? 0);
  const alone = without(count, datum);
  const weight = dot(alone, alone);
  if (!(weight > TELLS * dot(count, count))) return null;

  const off = at(before.heightUm, indices).map((height, k) => height - after.heightUm[common[k]!.after]!);
  const biteUm = dot(alone, off) / weight;
  const taken = plus(
    without(
      off.map((height, k) => height - biteUm * count[k]!),
      datum,
    ),
    count.map((n) => biteUm * n),
  );
  const scatterUm = Math.sqrt(
    taken.reduce((sum, height, k) => sum + (height - biteUm * count[k]!) ** 2, 0) / freedom,
  );
  const weights = alone.map((n) => n / weight);
  const of = (which: 'before' | 'after'): Combination => ({
    stations: common.map((each) => each[which]),
    weights,
  });
  const uSurveys = Math.hypot(
    standardUncertainty(before, of('before')),
    standardUncertainty(after, of('after')),
  );
  return {
    biteUm,
    uUm: Math.hypot(uSurveys, scatterUm / Math.sqrt(weight)),
    scatterUm,
    stations: Object.fromEntries(
      common.map(({ name }, k) => [name, { passes: count[k]!, takenUm: taken[k]! }]),
    ),
  };
}

function without(values: Float64Array, columns: readonly Float64Array[]): Float64Array {
  const { factors } = fitColumns(values, columns);
  return values.map((value, k) =>
    columns.reduce((rest, column, j) => rest - factors[j]! * column[k]!, value),
  );
}

function plus(a: Float64Array, b: Float64Array): Float64Array {
  return a.map((value, k) => value + b[k]!);
}
