import { z } from 'zod';
import { ends, lengthMm, stationCount } from './dimensions.ts';
import { type HeightRun, onceMore, type Plan, row, rowNames } from './plan.ts';

/** A dovetail measured over (or between) two equal pins at several places along the slide. */
export const dovetailSize = {
  kind: z.literal('dovetail'),
  lengthMm: lengthMm.describe('from the first to the last place, mm'),
  stations: stationCount.default(3),
  pinDiameterMm: z.number().positive().max(1000),
  flankAngleDeg: z.number().gt(10).lt(90).default(55).describe('between flank and flat'),
  form: z.enum(['male', 'female']).default('male'),
  ...ends,
};
type DovetailSize = z.output<z.ZodObject<typeof dovetailSize>>;

export function planDovetail(size: DovetailSize): Plan {
  const names = rowNames('D', size.stations - 1);
  const run: HeightRun = {
    id: 'over pins',
    words: size.form === 'male' ? 'Size over the pins' : 'Size between the pins',
    line: 'dovetail',
    wanted: true,
    reads: 'height',
    tips: names,
    sense: 1,
    offset: 'known',
    slope: 'known',
  };
  return {
    stations: row(names, [0, 0], [size.lengthMm, 0]),
    lines: { dovetail: names },
    runs: [run, onceMore(run)],
  };
}
