import { z } from 'zod';
import { baseMm, ends, facingOf, lengthMm, prefix, stationCount, walking } from './dimensions.ts';
import { type Plan, row, rowNames, type TiltRun } from './plan.ts';
import { walksOver } from './walked-line.ts';

const shape = z.enum(['flat', 'vee']);

/** A bed: two ways walked lengthwise, and a level on a bridge across both. */
export const bedSize = {
  kind: z.literal('bed'),
  lengthMm: lengthMm.describe('measured length of the ways, mm'),
  gaugeMm: lengthMm.describe('distance between the two lines that are walked, mm'),
  baseMm,
  stations: stationCount.describe('stations on each way, one more than the steps'),
  frontPrefix: prefix.default('F'),
  rearPrefix: prefix.default('R'),
  frontShape: shape.default('flat'),
  rearShape: shape.default('vee'),
  crossEvery: z
    .number()
    .int()
    .min(1)
    .max(100)
    .default(1)
    .describe('a cross reading at every so many stations'),
  crossFaces: z.enum(['far', 'start']).default('far').describe('far: the plus end points to the rear way'),
  ...ends,
  ...walking,
};
type BedSize = z.output<z.ZodObject<typeof bedSize>>;

export function planBed(size: BedSize): Plan {
  const count = size.stations - 1;
  const lengthwise = count * size.baseMm;
  const front = rowNames(size.frontPrefix, count);
  const rear = rowNames(size.rearPrefix, count);
  const across = front.flatMap((name, k): [string, string][] =>
    k % size.crossEvery === 0 || k === count ? [[name, rear[k]!]] : [],
  );
  const cross: TiltRun = {
    id: 'across',
    words: 'Across both ways on the bridge',
    line: 'front',
    wanted: true,
    reads: 'tilt',
    feet: across,
    facing: facingOf(size.crossFaces),
    zero: 'free',
  };
  return {
    stations: [
      ...row(front, [0, 0], [lengthwise, 0]),
      ...row(rear, [0, size.gaugeMm], [lengthwise, size.gaugeMm]),
    ],
    lines: { front, rear },
    runs: [
      ...walksOver('front', 'Front way', front, size),
      cross,
      ...walksOver('rear', 'Rear way', rear, size),
    ],
  };
}
