import { eightLinePlate } from '../figures/eight-lines.ts';
import {
  eightLineSentence,
  eightLinesOfWalks,
  type Place,
  type TiltStep,
} from '../figures/eight-lines-of-walks.ts';
import type { Sheet, Walk } from '../sheet/schema.ts';
import { toInternal } from '../units.ts';

/**
 * A plate walked along the eight lines, worked by the hand columns as well: somebody who learnt it that way can
 * compare, and sees how much the lines fail to close. Of lines walked out and back the first walk is taken, as by
 * hand. No note where the walks are not those eight lines.
 */
export function byHandNotes(sheet: Sheet): string[] {
  // Eight lines, walked out or out and back: anything else is not worked by hand, however large it is.
  const eight = sheet.walks.length >= 8 && sheet.walks.length <= 16;
  if (sheet.kind !== 'plate' || !eight) return [];
  const walks = new Map<string, TiltStep[]>();
  for (const walk of sheet.walks) {
    const steps = stepsOf(sheet, walk);
    if (!steps) return [];
    const line = keyOf(steps);
    if (!walks.has(line)) walks.set(line, steps);
  }
  const lines = eightLinesOfWalks([...walks.values()]);
  return lines ? [eightLineSentence(eightLinePlate(lines))] : [];
}

/** The steps of a walk with its facing counted in; undefined when one was skipped. */
function stepsOf({ stations, units }: Sheet, walk: Walk): TiltStep[] | undefined {
  const placeOf = (name: string): Place => {
    const [x, y] = stations[name]!;
    return [toInternal('length', x, units.length), toInternal('length', y, units.length)];
  };
  const steps: TiltStep[] = [];
  for (const [from, to, value] of walk.readings) {
    if (value === null) return undefined;
    const slopeUmPerM = walk.facing * toInternal('tilt', value, units.tilt);
    steps.push({ from: placeOf(from), to: placeOf(to), slopeUmPerM });
  }
  return steps;
}

/** The same for a line whichever way round it was walked: where its steps lie. */
function keyOf(steps: readonly TiltStep[]): string {
  return [...new Set(steps.flatMap(({ from, to }) => [from.join(), to.join()]))].sort().join(' ');
}
