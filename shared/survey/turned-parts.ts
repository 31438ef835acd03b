import { z } from 'zod';
import { ends, lengthMm, senseOf, stationCount, sweeping } from './dimensions.ts';
import { type HeightRun, onceMore, type Plan, row, rowNames } from './plan.ts';

/**
 * What a lathe has cut tells how it is aligned: two collars turned at one setting, measured over their diameters, and a
 * face that was faced, measured under a straightedge laid across it.
 */

export const collarsSize = {
  kind: z.literal('collars'),
  lengthMm: lengthMm.describe('from the first to the last collar, mm'),
  stations: stationCount.default(2).describe('collars'),
  ...ends,
};

export const faceSize = {
  kind: z.literal('face'),
  lengthMm: lengthMm.describe('across the face, from rim to rim, mm'),
  stations: z
    .number()
    .int()
    .min(3)
    .max(999)
    .refine((count) => count % 2 === 1, 'is an odd number, so that one lies in the middle')
    .default(3)
    .describe('places from rim to rim, one of them in the middle'),
  startEnd: ends.startEnd.default('near rim'),
  farEnd: ends.farEnd.default('far rim'),
  ...sweeping,
};

export function planCollars(size: z.output<z.ZodObject<typeof collarsSize>>): Plan {
  const names = rowNames('K', size.stations - 1);
  const run: HeightRun = {
    id: 'diameters',
    words: 'Diameter of the collars',
    line: 'collars',
    wanted: true,
    reads: 'height',
    tips: names,
    sense: 1,
    offset: 'known',
    slope: 'known',
  };
  return planOf('collars', names, size.lengthMm, run);
}

export function planFace(size: z.output<z.ZodObject<typeof faceSize>>): Plan {
  const names = rowNames('C', size.stations - 1);
  const run: HeightRun = {
    id: 'across',
    words: 'Across the face',
    line: 'face',
    wanted: true,
    reads: 'height',
    tips: names,
    sense: senseOf(size.plus),
    offset: 'free',
    slope: 'free',
  };
  return planOf('face', names, size.lengthMm, run);
}

function planOf(line: string, names: string[], lengthMm: number, run: HeightRun): Plan {
  return {
    stations: row(names, [0, 0], [lengthMm, 0]),
    lines: { [line]: names },
    runs: [run, onceMore(run)],
  };
}
