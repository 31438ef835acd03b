import type { AdjustedHeights } from '../adjust/adjusted.ts';

/** Apart less than this, mm, two surveys stand on the same place: a pencil line. */
const SAME_PLACE_MM = 1;

/** A station that two surveys have in common: where it stands in the arrays of each. */
export interface CommonStation {
  readonly name: string;
  readonly before: number;
  readonly after: number;
}

/** Stations of one name at one place in both surveys, of those in `names`, in that order. */
export function commonStations(
  before: AdjustedHeights,
  after: AdjustedHeights,
  names: readonly string[],
): CommonStation[] {
  const [inBefore, inAfter] = [before, after].map((each) => new Map(each.names.map((name, k) => [name, k])));
  return names.flatMap((name) => {
    const [b, a] = [inBefore!.get(name), inAfter!.get(name)];
    if (b === undefined || a === undefined) return [];
    const apartMm = Math.hypot(before.xMm[b]! - after.xMm[a]!, before.yMm[b]! - after.yMm[a]!);
    return apartMm <= SAME_PLACE_MM ? [{ name, before: b, after: a }] : [];
  });
}
