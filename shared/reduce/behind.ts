import { adjust } from '../adjust/adjust.ts';
import type { AdjustedHeights } from '../adjust/adjusted.ts';
import { type Combination, combine, dense, single } from '../figures/combination.ts';
import { riseAcross } from '../figures/corner-plane.ts';
import { lineReference, meanOf } from '../figures/line-reference.ts';
import { departureCombination, type ReferenceKind } from '../figures/reference.ts';
import type { Sheet } from '../sheet/schema.ts';
import { type Surveyed, surveyedOf } from './surveyed.ts';

/** A reading of the sheet, and how much it counts in a height. */
export interface ReadingBehind {
  /** Id of its walk or sweep. */
  readonly run: string;
  readonly at: readonly [string, string] | readonly [string];
  /** µm that the height would stand higher had the reading been 1 µm/m, or 1 µm, more. */
  readonly weight: number;
}

/** A height that readings make. */
export type Explained =
  /** Of a station of a line over its reference, or over the motion, through the mean of the line. */
  | { readonly line: string; readonly station: string; readonly over: ReferenceKind | 'motion' }
  /** Of the second station of a pair over the first one, against how another pair lies. */
  | { readonly pair: Pair; readonly against: Pair };
type Pair = readonly [string, string];

/**
 * The readings that make a height, with the weight that the adjustment gives each: height = Σ weight · reading. Empty
 * when the sheet has no such height.
 *
 * @throws WayscribeError of the adjustment
 */
export function readingsBehind(sheet: Sheet, explained: Explained): ReadingBehind[] {
  const adjustment = adjust(sheet);
  const surveyed = surveyedOf(sheet, adjustment);
  const combination = 'pair' in explained ? ofPair(surveyed, explained) : ofLine(surveyed, explained);
  if (!combination) return [];
  const weights = adjustment.weightsIn(dense(combination, surveyed.heights.names.length));
  const { group, reading } = adjustment.observations;
  return Array.from(weights, (weight, row) => {
    const walk = sheet.walks[group[row]!];
    if (walk) {
      const [from, to] = walk.readings[reading[row]!]!;
      return { run: walk.id, at: [from, to] as const, weight };
    }
    const sweep = sheet.sweeps[group[row]! - sheet.walks.length]!;
    return { run: sweep.id, at: [sweep.readings[reading[row]!]![0]] as const, weight };
  });
}

function ofLine(
  { lines, heights }: Surveyed,
  { line, station, over }: Extract<Explained, { line: string }>,
): Combination | null {
  const found = lines[line];
  const index = heights.names.indexOf(station);
  const place = found ? Array.from(found.stations).indexOf(index) : -1;
  if (!found || place < 0) return null;
  return over === 'motion'
    ? combine([1, single(index)], [-1, meanOf(found.stations)])
    : departureCombination(lineReference(over, found), place);
}

function ofPair(
  { heights }: Surveyed,
  { pair, against }: Extract<Explained, { pair: Pair }>,
): Combination | null {
  const [here, there] = [indicesOf(heights, pair), indicesOf(heights, against)];
  return here && there ? riseAcross(heights, here, there) : null;
}

function indicesOf({ names }: AdjustedHeights, [from, to]: Pair): [number, number] | null {
  const [a, b] = [names.indexOf(from), names.indexOf(to)];
  return a < 0 || b < 0 ? null : [a, b];
}
