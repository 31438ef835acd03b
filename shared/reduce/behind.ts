import { adjust } from '../adjust/adjust.ts';
import { dense } from '../figures/combination.ts';
import { lineReference } from '../figures/line-reference.ts';
import { departureCombination, type ReferenceKind } from '../figures/reference.ts';
import type { Sheet } from '../sheet/schema.ts';
import { surveyedOf } from './surveyed.ts';

/** A reading of the sheet, and how much it counts in a height. */
export interface ReadingBehind {
  /** Id of its walk or sweep. */
  readonly run: string;
  readonly at: readonly [string, string] | readonly [string];
  /** µm that the height would stand higher had the reading been 1 µm/m, or 1 µm, more. */
  readonly weight: number;
}

/**
 * The readings that make the height of a station over the reference of its line, with the weight that the adjustment
 * gives each: height = Σ weight · reading. Empty when the line has no such station.
 *
 * @throws WayscribeError of the adjustment
 */
export function readingsBehind(
  sheet: Sheet,
  line: string,
  station: string,
  kind: ReferenceKind,
): ReadingBehind[] {
  const adjustment = adjust(sheet);
  const { lines, heights } = surveyedOf(sheet, adjustment);
  const found = lines[line];
  const index = heights.names.indexOf(station);
  const place = found ? Array.from(found.stations).indexOf(index) : -1;
  if (!found || place < 0) return [];
  const combination = departureCombination(lineReference(kind, found), place);
  const weights = adjustment.weightsIn(dense(combination, heights.names.length));
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
