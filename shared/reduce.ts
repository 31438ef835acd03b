import { type Adjustment, adjust } from './adjust/adjust.ts';
import { lineFigures } from './figures/line-figures.ts';
import { byHandNotes } from './reduce/by-hand.ts';
import { figuresOf } from './reduce/figures.ts';
import { metalOf } from './reduce/metal.ts';
import { notesOf } from './reduce/notes.ts';
import { stationsOf } from './reduce/stations.ts';
import { surveyedOf } from './reduce/surveyed.ts';
import { verdictsOf } from './reduce/verdicts.ts';
import type { Result } from './sheet/result.ts';
import type { Reference, Sheet } from './sheet/schema.ts';

export interface ReduceOptions {
  /**
   * What heights are shown against. Left out: `ends` for lines, `leastSquares` for planes. Planes have no
   * ends: they take `leastSquares` instead.
   */
  readonly reference?: Reference;
}

/**
 * Everything that a proved sheet comes to: the one pure function from readings to result. The same sheet
 * gives the same JSON, byte for byte.
 *
 * @throws WayscribeError `adjust.notTied` or `adjust.notDetermined` when the readings do not suffice,
 * `sheet.invalid` when a limit is set on a figure that is not made, `sheet.tooLarge` when the readings are
 * too entangled to be solved.
 */
export function reduce(sheet: Sheet, options: ReduceOptions = {}): Result {
  const adjustment = adjust(sheet);
  const surveyed = surveyedOf(sheet, adjustment, options.reference);
  const { heights, lines: named, lineReference, planeReference, isPlane } = surveyed;
  const lines: Result['lines'] = Object.fromEntries(
    Object.entries(named).map(([name, line]) => [name, lineFigures(heights, line, lineReference)]),
  );
  const { figures, notes } = figuresOf(sheet, surveyed);
  const metal = metalOf(sheet, surveyed);
  const stations = stationsOf(sheet.kind, surveyed);
  return {
    result: 1,
    kind: sheet.kind,
    reference: isPlane ? planeReference : lineReference,
    stations: stations.heights,
    lines,
    figures,
    readings: readingsOf(sheet, adjustment),
    fit: adjustment.fit,
    zeros: Object.fromEntries(adjustment.zeros.map(({ name, value, u }) => [name, { value, u }])),
    verdicts: verdictsOf(sheet, surveyed, lines, figures),
    metal: metal.metal,
    notes: [
      ...notes,
      ...byHandNotes(sheet),
      ...stations.notes,
      ...metal.notes,
      ...notesOf(sheet, adjustment),
    ],
  };
}

function readingsOf(sheet: Sheet, adjustment: Adjustment): Result['readings'] {
  const { observations, residual, redundancy, standardised, suspect } = adjustment;
  return Array.from({ length: observations.count }, (_, row) => {
    const group = observations.group[row]!;
    const index = observations.reading[row]!;
    const w = standardised[row]!;
    const fitted = {
      residual: residual[row]!,
      redundancy: redundancy[row]!,
      w: Number.isNaN(w) ? null : w,
      suspect: row === suspect,
    };
    const walk = sheet.walks[group];
    if (walk) {
      const [from, to] = walk.readings[index]!;
      return { walk: walk.id, from, to, ...fitted };
    }
    const sweep = sheet.sweeps[group - sheet.walks.length]!;
    return { sweep: sweep.id, at: sweep.readings[index]![0], ...fitted };
  });
}
