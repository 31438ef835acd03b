import { type Adjustment, adjust } from './adjust/adjust.ts';
import { lineOf } from './figures/line.ts';
import { lineFigures } from './figures/line-figures.ts';
import { lineReference } from './figures/line-reference.ts';
import { lineMetal } from './metal/line-metal.ts';
import { notesOf } from './reduce-notes.ts';
import type { Result } from './sheet/result.ts';
import type { Reference, Sheet } from './sheet/schema.ts';

export interface ReduceOptions {
  /** What heights are shown against; `ends` for lines and `leastSquares` for planes when left out. */
  readonly reference?: Reference;
}

/**
 * Everything that a proved sheet comes to: the one pure function from readings to result.
 *
 * @throws WayscribeError `adjust.notTied` or `adjust.notDetermined` when the readings do not suffice,
 * `sheet.tooLarge` when they are too entangled to be solved.
 */
export function reduce(sheet: Sheet, options: ReduceOptions = {}): Result {
  const adjustment = adjust(sheet);
  const reference = options.reference ?? 'ends';
  const { heights, fit } = adjustment;
  const indexOf = new Map(heights.names.map((name, k) => [name, k]));
  const lines: Result['lines'] = {};
  const metal: Result['metal'] = {};
  for (const [name, stations] of Object.entries(sheet.lines)) {
    const line = lineOf(
      heights,
      stations.map((station) => indexOf.get(station)!),
      `lines.${name}`,
    );
    lines[name] = lineFigures(heights, line, reference) as Result['lines'][string];
    if (sheet.target) {
      metal[name] = lineMetal(
        heights,
        line,
        lineReference(reference, line),
        sheet.target,
      ) as Result['metal'][string];
    }
  }
  return {
    result: 1,
    kind: sheet.kind,
    reference,
    stations: Object.values(lines)[0]?.stations ?? {},
    lines,
    figures: {},
    readings: readingsOf(sheet, adjustment),
    fit,
    zeros: Object.fromEntries(adjustment.zeros.map(({ name, value, u }) => [name, { value, u }])),
    verdicts: [],
    metal,
    notes: notesOf(sheet, adjustment),
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
