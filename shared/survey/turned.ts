import { z } from 'zod';
import { ends, lengthMm, senseOf, stationCount, sweeping } from './dimensions.ts';
import { type HeightRun, onceMore, type Plan, row, rowNames } from './plan.ts';

/**
 * Surveys against a thing that is turned over, so that its own error drops out: a straightedge along a way, a
 * square on a table, a test bar in a spindle. All are swept once as the thing stands and once turned; a second sweep of
 * either checks the first.
 */

export const straightedgeSize = {
  kind: z.literal('straightedge'),
  lengthMm: lengthMm.describe('length that is swept, mm'),
  stations: stationCount,
  ...ends,
  ...sweeping,
};

export const squareSize = {
  kind: z.literal('square'),
  lengthMm: lengthMm.describe('length of the blade that is swept, mm'),
  stations: stationCount.default(2),
  ...ends,
  ...sweeping,
};

export const barSize = {
  kind: z.literal('bar'),
  lengthMm: lengthMm.describe('from the near to the far station, mm'),
  stations: stationCount.default(2),
  planes: z.enum(['top', 'side', 'both']).default('both'),
  sagUm: z.number().min(0).max(1e5).default(0).describe('how far the bar hangs down at its far station, µm'),
  ...ends,
  ...sweeping,
};

type TurnedSize = z.output<z.ZodObject<typeof straightedgeSize>> | z.output<z.ZodObject<typeof squareSize>>;

export function planStraightedge(size: TurnedSize): Plan {
  const line = size.kind === 'square' ? 'blade' : 'way';
  const names = rowNames(size.kind === 'square' ? 'U' : 'F', size.stations - 1);
  const slope = size.kind === 'square' ? 'known' : 'free';
  const runs = bothWays(line, names, {
    artefact: size.kind,
    turning: size.kind === 'square' ? 'turned round' : 'turned over',
    sense: senseOf(size.plus),
    slope,
  });
  return { stations: row(names, [0, 0], [size.lengthMm, 0]), lines: { [line]: names }, runs };
}

export function planBar(size: z.output<z.ZodObject<typeof barSize>>): Plan {
  const planes = size.planes === 'both' ? (['top', 'side'] as const) : [size.planes];
  const lines = Object.fromEntries(
    planes.map((plane) => [plane, rowNames(plane === 'top' ? 'T' : 'S', size.stations - 1)]),
  );
  return {
    stations: planes.flatMap((plane, k) => row(lines[plane]!, [0, k], [size.lengthMm, k])),
    lines,
    runs: planes.flatMap((plane) =>
      bothWays(plane, lines[plane]!, {
        artefact: `${plane} of the bar`,
        turning: 'turned half a turn',
        sense: senseOf(size.plus),
        slope: 'known',
      }),
    ),
  };
}

function bothWays(
  line: string,
  tips: string[],
  {
    artefact,
    turning,
    sense,
    slope,
  }: { artefact: string; turning: string; sense: 1 | -1; slope: 'free' | 'known' },
): HeightRun[] {
  const run = (turned: boolean): HeightRun => ({
    id: turned ? `${line} turned` : `${line} as it stands`,
    words: turned ? `${title(artefact)}, ${turning}` : `${title(artefact)}, as it stands`,
    line,
    wanted: true,
    reads: 'height',
    tips,
    sense,
    offset: 'free',
    slope,
    artefact: { name: artefact, turned },
  });
  return [false, true].flatMap((turned) => [run(turned), onceMore(run(turned))]);
}

function title(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
