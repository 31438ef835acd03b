import type { AdjustedHeights } from '../adjust/adjusted.ts';
import { areaOf } from '../figures/area.ts';
import { single } from '../figures/combination.ts';
import { lineOf } from '../figures/line.ts';
import { lineReference } from '../figures/line-reference.ts';
import { type PlaneReferenceKind, planeReference } from '../figures/plane-reference.ts';
import { departuresFrom, type Reference, type ReferenceKind } from '../figures/reference.ts';
import { commonStations } from './common-stations.ts';

/** A value with its standard uncertainty. */
export interface Measured {
  readonly value: number;
  readonly u: number;
}

/** After less before, with its own uncertainty; `same` where it is smaller than twice that. */
export interface Difference extends Measured {
  readonly same: boolean;
}

/** One station before and after, each over its own reference, µm. */
export interface StationDifference {
  readonly name: string;
  readonly before: Measured;
  readonly after: Measured;
  readonly difference: Difference;
}

const COVERAGE = 2;

/** Two surveys know nothing of each other, so their variances add. Both values in one unit. */
export function differenceOf(before: Measured, after: Measured): Difference {
  const value = after.value - before.value;
  const u = Math.hypot(before.u, after.u);
  return { value, u, same: Math.abs(value) <= COVERAGE * u };
}

/** Reference of a line whose slope is the very fault that is looked for: level through its first common station. */
export type LineReferenceKind = ReferenceKind | 'level';

/**
 * A line before and after, each against its own reference through the stations that both surveys have. Empty with
 * fewer than two of these.
 */
export function lineDifferences(
  before: AdjustedHeights,
  after: AdjustedHeights,
  names: readonly string[],
  reference: LineReferenceKind,
): StationDifference[] {
  return differences(before, after, names, 2, (heights, stations) =>
    reference === 'level' ? levelThrough(stations) : lineReference(reference, lineOf(heights, stations)),
  );
}

function levelThrough(stations: readonly number[]): Reference {
  return { stations, basis: [new Float64Array(stations.length).fill(1)], parameters: [single(stations[0]!)] };
}

/** The stations of a plate before and after, each survey against its own plane. Empty with fewer than three. */
export function planeDifferences(
  before: AdjustedHeights,
  after: AdjustedHeights,
  names: readonly string[],
  reference: PlaneReferenceKind,
): StationDifference[] {
  return differences(before, after, names, 3, (heights, stations) =>
    planeReference(reference, areaOf(heights, stations)),
  );
}

function differences(
  before: AdjustedHeights,
  after: AdjustedHeights,
  names: readonly string[],
  fewest: number,
  referenceOf: (heights: AdjustedHeights, stations: number[]) => Reference,
): StationDifference[] {
  const common = commonStations(before, after, names);
  if (common.length < fewest) return [];
  const over = (heights: AdjustedHeights, which: 'before' | 'after') =>
    departuresFrom(
      heights,
      referenceOf(
        heights,
        common.map((each) => each[which]),
      ),
    );
  const [was, is] = [over(before, 'before'), over(after, 'after')];
  return common.map(({ name }, k) => {
    const [b, a] = [was, is].map(({ heightUm, uUm }) => ({ value: heightUm[k]!, u: uUm[k]! }));
    return { name, before: b!, after: a!, difference: differenceOf(b!, a!) };
  });
}
