import { z } from 'zod';
import { ends, lengthMm, senseOf, stationCount, sweeping } from './dimensions.ts';
import { type HeightRun, type Plan, row, rowNames } from './plan.ts';

/** A slide: an indicator carried by it is swept along one or two faces, out and back. */
export const slideSize = {
  kind: z.literal('slide'),
  travelMm: lengthMm.describe('travel over which it is swept, mm'),
  stations: stationCount,
  faces: z.enum(['top', 'side', 'both']).default('top').describe('faces that the tip runs on'),
  back: z.enum(['no', 'same']).default('same').describe('sweep back as well'),
  ...ends,
  ...sweeping,
};
type SlideSize = z.output<z.ZodObject<typeof slideSize>>;

export function planSlide(size: SlideSize): Plan {
  const faces = size.faces === 'both' ? (['top', 'side'] as const) : [size.faces];
  const lines: Record<string, string[]> = {};
  const runs: HeightRun[] = [];
  for (const face of faces) {
    const names = rowNames(face === 'top' ? 'T' : 'S', size.stations - 1);
    lines[face] = names;
    const out: HeightRun = {
      id: `${face} out`,
      words: `${face === 'top' ? 'Top' : 'Side'} face, going out`,
      line: face,
      wanted: true,
      reads: 'height',
      tips: names,
      sense: senseOf(size.plus),
      offset: 'free',
      slope: 'known',
    };
    const back = {
      ...out,
      id: `${face} back`,
      words: out.words.replace('going out', 'coming back'),
      wanted: size.back !== 'no',
    };
    runs.push(out, { ...back, tips: names.toReversed() });
  }
  // Faces have no place beside each other that matters; they are only kept apart.
  const stations = faces.flatMap((face, k) => row(lines[face]!, [0, k], [size.travelMm, k]));
  return { stations, lines, runs };
}
