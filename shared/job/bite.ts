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
  /** Standard deviation of what one pass takes off at one station, µm: how uneven the hand is. */
  readonly unevenUm: number;
  readonly stations: Readonly<Record<string, TakenOff>>;
}
export interface TakenOff {
  readonly passes: number;
  /** What came off by the two surveys, µm. */
  readonly takenUm: number;
}

/**
 * Until the stations tell, a hand is taken to be uneven by this share of its bite, and that to weigh as much as so many
 * stations (assumed, no source).
 */
const UNEVEN = 0.2;
const AS_STATIONS = 4;

/** Of the passes: what differs by less from a slope along the part cannot be told from the datum of the surveys. */
const TELLS = 1e-6;

/** How many of the passes covered each station. */
function passesByStation(passes: readonly (readonly string[])[]): Map<string, number> {
  const count = new Map<string, number>();
  for (const names of passes) {
    for (const name of new Set(names)) count.set(name, (count.get(name) ?? 0) + 1);
  }
  return count;
}

/**
 * Least squares of the heights that came off, before − after = bite·passes + a + b·x (+ c·y): neither survey knows its
 * own height or tilt. Its uncertainty is that of both surveys carried through, and that of the hand, whose every pass
 * is a little different: n passes add n times the variance of one. What the stations say of it lies in what is left
 * over, r, with E(r²) = τ²·Σ n_k·m_kk for the residual matrix M. As part of r is noise of the surveys, the uncertainty is
 * rather too large than too small.
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
  if (indices.length <= datum.length + 1) return null;

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
  const weights = alone.map((n) => n / weight);
  const rest = taken.map((height, k) => height - biteUm * count[k]!);
  const unevenUm = unevennessOf(rest, count, [...datum, count], biteUm);
  const uHand = unevenUm * Math.sqrt(weights.reduce((sum, w, k) => sum + w * w * count[k]!, 0));
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
    uUm: Math.hypot(uSurveys, uHand),
    unevenUm,
    stations: Object.fromEntries(
      common.map(({ name }, k) => [name, { passes: count[k]!, takenUm: taken[k]! }]),
    ),
  };
}

/** Standard deviation of a single pass: what is left over, together with what is assumed of any hand. */
function unevennessOf(
  rest: Float64Array,
  count: Float64Array,
  columns: readonly Float64Array[],
  biteUm: number,
): number {
  const told = rest.reduce((sum, _, k) => sum + count[k]! * residualShare(k, columns), 0);
  const passes = count.reduce((sum, n) => sum + n, 0);
  // As stations: passes that are told of, by the mean number of passes on a station that was scraped.
  const perStation = passes / count.filter((n) => n > 0).length;
  const assumed = (UNEVEN * biteUm) ** 2;
  return Math.sqrt(
    (dot(rest, rest) / perStation + AS_STATIONS * assumed) / (told / perStation + AS_STATIONS),
  );
}

/** m_kk of the residual matrix: how much of an error at station k is left over when the columns are fitted. */
function residualShare(k: number, columns: readonly Float64Array[]): number {
  const alone = new Float64Array(columns[0]!.length);
  alone[k] = 1;
  return without(alone, columns)[k]!;
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
