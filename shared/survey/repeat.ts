import { z } from 'zod';
import { lengthMm, senseOf, stationCount, sweeping } from './dimensions.ts';
import { type HeightRun, onceMore, type Plan, row, rowNames } from './plan.ts';

/**
 * Repeat reading on a plate: a gauge that stands on feet and touches the plate beside them is set on one place after
 * another. How much its reading changes tells how alike the plate is from place to place; how flat it is as a whole is
 * another question, and another survey.
 */
export const repeatSize = {
  kind: z.literal('repeat'),
  lengthMm: lengthMm.describe('left to right, mm'),
  widthMm: lengthMm.describe('front to back, mm'),
  borderMm: z.number().min(0).max(10_000).default(25).describe('edge that is left out on every side, mm'),
  rows: z.number().int().min(1).max(26).default(3).describe('rows of places, front to back'),
  stations: stationCount.default(5).describe('places in each row'),
  ...sweeping,
};
type RepeatSize = z.output<z.ZodObject<typeof repeatSize>>;

export function planRepeat(size: RepeatSize): Plan {
  const x = Math.max(0, size.lengthMm - 2 * size.borderMm);
  const y = Math.max(0, size.widthMm - 2 * size.borderMm);
  const rows = Array.from({ length: size.rows }, (_, k) => {
    const letter = String.fromCharCode(65 + k);
    const yMm = size.rows > 1 ? (y * k) / (size.rows - 1) : y / 2;
    return { line: `row ${letter}`, letter, names: rowNames(letter, size.stations - 1), yMm };
  });
  return {
    stations: rows.flatMap(({ names, yMm }) => row(names, [0, yMm], [x, yMm])),
    lines: Object.fromEntries(rows.map(({ line, names }) => [line, names])),
    runs: rows.flatMap(({ line, letter, names }) => {
      // The zero of the gauge is the same all over the plate: that is what the reading is about.
      const run: HeightRun = {
        id: line,
        words: `Row ${letter}, left to right`,
        line,
        wanted: true,
        reads: 'height',
        tips: names,
        sense: senseOf(size.plus),
        offset: 'known',
        slope: 'known',
      };
      return [run, onceMore(run)];
    }),
  };
}
