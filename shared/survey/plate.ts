import { z } from 'zod';
import { lengthMm, walking } from './dimensions.ts';
import { type Plan, type PlannedStation, row, rowNames, type TiltRun } from './plan.ts';
import { walksOver } from './walked-line.ts';

/** A plate walked along eight lines (edges, diagonals, centre lines) or along the lines of a grid. */
export const plateSize = {
  kind: z.literal('plate'),
  lengthMm: lengthMm.describe('left to right, mm'),
  widthMm: lengthMm.describe('front to back, mm'),
  borderMm: z.number().min(0).max(10_000).default(25).describe('edge that is left out on every side, mm'),
  baseMm: z.number().positive().max(10_000).describe('foot spacing of the level, mm'),
  diagonalBaseMm: z
    .number()
    .positive()
    .max(10_000)
    .optional()
    .describe('foot spacing on the diagonals, mm; left out when it is the same'),
  pattern: z.enum(['eight lines', 'grid']).default('eight lines'),
  zero: z
    .enum(['shared', 'free'])
    .default('shared')
    .describe('shared: a level, one zero for all lines; free: a zero of its own for each line'),
  ...walking,
};
type Point = readonly [number, number];
type PlateSize = z.output<z.ZodObject<typeof plateSize>>;

const mostSteps = 999;
const mostStations = 5000;

/** Adds what makes a plate of these dimensions impossible to walk: nothing left inside the border, or too many stations. */
export function checkPlate(size: PlateSize, context: z.RefinementCtx): void {
  const [x, y] = innerSize(size);
  if (x <= 0 || y <= 0) {
    const most = Math.min(size.lengthMm, size.widthMm) / 2;
    context.addIssue({
      code: 'custom',
      path: ['borderMm'],
      message: `nothing of the plate is left inside a border of ${size.borderMm} mm; it must be below ${most} mm`,
    });
    return;
  }
  const longest = size.pattern === 'grid' ? Math.max(x, y) : Math.hypot(x, y);
  const steps = longest / Math.min(size.baseMm, size.diagonalBaseMm ?? size.baseMm);
  const stations = size.pattern === 'grid' ? (x / size.baseMm + 1) * (y / size.baseMm + 1) : 0;
  if (steps <= mostSteps && stations <= mostStations) return;
  context.addIssue({
    code: 'custom',
    path: ['baseMm'],
    message: `a foot spacing of ${size.baseMm} mm makes more than ${steps > mostSteps ? `${mostSteps} steps in a line` : `${mostStations} stations`}; a longer one is needed`,
  });
}

/** What is left inside the border: left to right and near to far, mm. */
function innerSize({ lengthMm, widthMm, borderMm }: PlateSize): Point {
  return [lengthMm - 2 * borderMm, widthMm - 2 * borderMm];
}

/** An even number of steps of about `baseMm` over `spanMm`, so that a line has a station in its middle. */
export function evenSteps(spanMm: number, baseMm: number): number {
  return Math.max(2, 2 * Math.round(spanMm / baseMm / 2));
}

export function planPlate(size: PlateSize): Plan {
  return size.pattern === 'grid' ? planGrid(size) : planEightLines(size);
}

function planEightLines(size: PlateSize): Plan {
  const [x, y] = innerSize(size);
  const [near, far, left, right]: Point[] = [
    [x / 2, 0],
    [x / 2, y],
    [0, y / 2],
    [x, y / 2],
  ];
  const [nl, nr, fl, fr]: Point[] = [
    [0, 0],
    [x, 0],
    [0, y],
    [x, y],
  ];
  const along = evenSteps(x, size.baseMm);
  const up = evenSteps(y, size.baseMm);
  const slant = evenSteps(Math.hypot(x, y), size.diagonalBaseMm ?? size.baseMm);
  // Corners, middles of the edges and the centre belong to several lines and have one name in all of them.
  const lines: {
    line: string;
    title: string;
    prefix: string;
    ends: [string, string, string];
    n: number;
    from: Point;
    to: Point;
  }[] = [
    {
      line: 'first diagonal',
      title: 'Diagonal, near left to far right',
      prefix: 'P',
      ends: ['NL', 'C', 'FR'],
      n: slant,
      from: nl!,
      to: fr!,
    },
    {
      line: 'second diagonal',
      title: 'Diagonal, near right to far left',
      prefix: 'Q',
      ends: ['NR', 'C', 'FL'],
      n: slant,
      from: nr!,
      to: fl!,
    },
    {
      line: 'near edge',
      title: 'Near edge, left to right',
      prefix: 'N',
      ends: ['NL', 'NM', 'NR'],
      n: along,
      from: nl!,
      to: nr!,
    },
    {
      line: 'far edge',
      title: 'Far edge, left to right',
      prefix: 'F',
      ends: ['FL', 'FM', 'FR'],
      n: along,
      from: fl!,
      to: fr!,
    },
    {
      line: 'left edge',
      title: 'Left edge, near to far',
      prefix: 'L',
      ends: ['NL', 'LM', 'FL'],
      n: up,
      from: nl!,
      to: fl!,
    },
    {
      line: 'right edge',
      title: 'Right edge, near to far',
      prefix: 'R',
      ends: ['NR', 'RM', 'FR'],
      n: up,
      from: nr!,
      to: fr!,
    },
    {
      line: 'centre along',
      title: 'Centre line, left to right',
      prefix: 'H',
      ends: ['LM', 'C', 'RM'],
      n: along,
      from: left!,
      to: right!,
    },
    {
      line: 'centre across',
      title: 'Centre line, near to far',
      prefix: 'V',
      ends: ['NM', 'C', 'FM'],
      n: up,
      from: near!,
      to: far!,
    },
  ];
  const stations = new Map<string, PlannedStation>();
  const plan: Record<string, string[]> = {};
  const runs: TiltRun[] = [];
  for (const { line, title, prefix, ends, n, from, to } of lines) {
    const names = rowNames(prefix, n).map((name, k) =>
      k === 0 ? ends[0] : k === n / 2 ? ends[1] : k === n ? ends[2] : name,
    );
    for (const station of row(names, from, to))
      if (!stations.has(station.name)) stations.set(station.name, station);
    plan[line] = names;
    runs.push(...walksOver(line, title, names, size).map((run) => withZero(run, size)));
  }
  return { stations: [...stations.values()], lines: plan, runs };
}

function planGrid(size: PlateSize): Plan {
  const [x, y] = innerSize(size);
  const columns = Math.max(1, Math.round(x / size.baseMm));
  const rows = Math.max(1, Math.round(y / size.baseMm));
  const nameOf = (column: number, line: number) => `${letters(line)}${column}`;
  const stations: PlannedStation[] = [];
  const lines: Record<string, string[]> = {};
  const runs: TiltRun[] = [];
  for (let line = 0; line <= rows; line += 1) {
    const names = Array.from({ length: columns + 1 }, (_, column) => nameOf(column, line));
    stations.push(...row(names, [0, (y * line) / rows], [x, (y * line) / rows]));
    lines[`row ${letters(line)}`] = names;
    runs.push(...walksOver(`row ${letters(line)}`, `Row ${letters(line)}, left to right`, names, size));
  }
  for (let column = 0; column <= columns; column += 1) {
    const names = Array.from({ length: rows + 1 }, (_, line) => nameOf(column, line));
    lines[`column ${column}`] = names;
    runs.push(...walksOver(`column ${column}`, `Column ${column}, near to far`, names, size));
  }
  return { stations, lines, runs: runs.map((run) => withZero(run, size)) };
}

/**
 * A level keeps its zero from line to line unless it is turned; a mirror set up anew for each line does not.
 */
function withZero(run: TiltRun, { zero }: PlateSize): TiltRun {
  return { ...run, zero: zero === 'shared' ? 'level' : 'free' };
}

/** A, B, … Z, AA, AB, … */
function letters(k: number): string {
  return k < 26 ? String.fromCharCode(65 + k) : letters(Math.floor(k / 26) - 1) + letters(k % 26);
}
