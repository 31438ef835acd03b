import { z } from 'zod';
import { baseMm, ends, lengthMm, prefix, stationCount, walking } from './dimensions.ts';
import { type Plan, row, rowNames } from './plan.ts';
import { walksOver } from './walked-line.ts';

/** One way, walked with a level foot to foot, out and back. */
export const waySize = {
  kind: z.literal('way'),
  prefix: prefix.default('F').describe('first letters of the station names'),
  lengthMm: lengthMm.describe('measured length of the way, mm'),
  baseMm,
  stations: stationCount.describe('number of stations, one more than the steps'),
  ...ends,
  ...walking,
};
type WaySize = z.output<z.ZodObject<typeof waySize>>;

/** @param surface what the way is called; its line has this name */
export function planWay(size: WaySize, surface: string): Plan {
  const names = rowNames(size.prefix, size.stations - 1);
  return {
    stations: row(names, [0, 0], [(size.stations - 1) * size.baseMm, 0]),
    lines: { [surface]: names },
    runs: walksOver(surface, surface, names, size),
  };
}
