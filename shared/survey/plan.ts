/**
 * What a survey consists of: stations, the lines that figures are made for, and the runs that are walked or
 * swept, placement by placement. Every kind of survey is such a plan; nothing else in the program knows kinds.
 *
 * Axes in plan: x along the part from its start end, y across it from its front, both in mm.
 */

export interface PlannedStation {
  readonly name: string;
  readonly xMm: number;
  readonly yMm: number;
}

/** One placement: a level with its feet on two stations, or an indicator with its tip on one. */
export interface Placement {
  readonly run: string;
  readonly at: [string, string] | [string];
}

interface AnyRun {
  /** Short name, also the name of the walk or sweep in the sheet: `front out`. */
  readonly id: string;
  /** In words, to be read while it is done: `Front way, going out`. */
  readonly words: string;
  /** The line that it follows. */
  readonly line: string;
  /** Whether it belongs to the survey from the start; a person may add a run that does not, or drop one that does. */
  readonly wanted: boolean;
}

/** A walk of a level along a line, foot to foot. */
export interface TiltRun extends AnyRun {
  readonly reads: 'tilt';
  readonly feet: readonly [string, string][];
  /** +1 when a positive reading means that the second foot is higher, −1 when it means the contrary. */
  readonly facing: 1 | -1;
  /** `free`: a zero of its own; any other word: a zero shared by all runs that name it. */
  readonly zero: string;
}

/** A sweep of an indicator along a line, station by station. */
export interface HeightRun extends AnyRun {
  readonly reads: 'height';
  readonly tips: readonly string[];
  /** +1 when a positive reading means that the metal is high, −1 when it means that it is low. */
  readonly sense: 1 | -1;
  readonly slope: 'free' | 'known';
  readonly offset: 'free' | 'known';
  /** What the sweep is read against, when its own error is to be told apart, and whether it was turned over. */
  readonly artefact?: { readonly name: string; readonly turned: boolean };
  /** It does once more what another run does: expected of nobody, and yet nothing else would check that one. */
  readonly again?: true;
}

export type Run = TiltRun | HeightRun;

export interface Plan {
  readonly stations: readonly PlannedStation[];
  readonly lines: Readonly<Record<string, readonly string[]>>;
  readonly runs: readonly Run[];
}

/** Every placement of a run, in the order in which it is done. */
export function placementsOf(run: Run): Placement[] {
  return run.reads === 'tilt'
    ? run.feet.map((feet) => ({ run: run.id, at: feet }))
    : run.tips.map((tip) => ({ run: run.id, at: [tip] }));
}

/** A sweep back over what was swept already, if the person wants it. */
export function onceMore(run: HeightRun): HeightRun {
  return {
    ...run,
    id: `${run.id}, once more`,
    words: `${run.words}, once more`,
    wanted: false,
    again: true,
    tips: run.tips.toReversed(),
  };
}

/** Whether the tip can slide over a run without a stop: pins can't, they are put in place by place. */
export function canSweep(run: Run): run is HeightRun {
  return run.reads === 'height' && run.offset === 'free';
}

/** Which way a run goes, by the order of the stations of its line. */
export function wayOf({ lines }: Plan, { line, tips }: HeightRun): 'out' | 'back' {
  const names = lines[line] ?? tips;
  return names.indexOf(tips[0]!) <= names.indexOf(tips.at(-1)!) ? 'out' : 'back';
}

/** One text for one placement, to compare and to look up: `front out:F4-F5`. */
export function placementKey({ run, at }: Placement): string {
  return `${run}:${at.join('-')}`;
}

/** A placement as it is read out: `F4 – F5`. */
export function placeWords({ at }: Pick<Placement, 'at'>): string {
  return at.join(' – ');
}

/** Names of n + 1 stations in a row: F0, F1, … Fn. */
export function rowNames(prefix: string, steps: number): string[] {
  return Array.from({ length: steps + 1 }, (_, k) => `${prefix}${k}`);
}

/** Stations in an even row from one point of the plan to another. */
export function row(
  names: readonly string[],
  from: readonly [number, number],
  to: readonly [number, number],
): PlannedStation[] {
  const steps = names.length - 1;
  return names.map((name, k) => ({
    name,
    xMm: from[0] + ((to[0] - from[0]) * k) / steps,
    yMm: from[1] + ((to[1] - from[1]) * k) / steps,
  }));
}

/** The pairs of neighbours along a row: where the two feet of a level stand. */
export function steps(names: readonly string[]): [string, string][] {
  return names.slice(1).map((name, k) => [names[k]!, name]);
}
