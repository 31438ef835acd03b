import type { SheetInput } from '../sheet/sheet.ts';
import { type HeightRun, placementKey, placementsOf, type Run, type TiltRun } from '../survey/plan.ts';
import type { TakeEvent } from './events.ts';
import type { Session } from './fold.ts';
import { measuredSoFar } from './measured.ts';
import type { Setup } from './setup.ts';

/**
 * The sheet that a session boils down to: what counts of it, and nothing else.
 *
 * Readings stand in the order in which they were taken, because a drift runs along that order, and are
 * written as the instrument showed them (times the size of its graduation). A survey that is half done has a
 * sheet of its own: with the stations that are tied together so far, and a note that says what is missing.
 */
export function toSheet(session: Session): SheetInput {
  const { setup } = session;
  const { stations, lines, kind, loose, unturned } = measuredSoFar(session);
  const tied = new Set(stations.map(({ name }) => name));
  const runs = session.plan.runs.map((run) => ({ run, takes: takesOf(session, run, tied) }));
  const done = runs.filter(({ takes }) => takes.length > 0);
  const unit = setup.instrument.unit;
  const tilts = done.some(({ run }) => run.reads === 'tilt');
  const notes = notesOf(setup, loose, unturned);
  return {
    sheet: 1,
    kind,
    title: `${setup.part}, ${setup.surface}, ${setup.round}`,
    part: setup.part,
    phase: setup.round,
    ...(notes && { notes }),
    units: { length: 'mm', ...(tilts ? { tilt: unit } : { height: unit }) } as NonNullable<
      SheetInput['units']
    >,
    stations: Object.fromEntries(
      stations.map(({ name, xMm, yMm }) => [name, [xMm, yMm] as [number, number]]),
    ),
    lines,
    walks: done.flatMap(({ run, takes }) => (run.reads === 'tilt' ? walk(run, takes, setup) : [])),
    sweeps: done.flatMap(({ run, takes }) =>
      run.reads === 'height' ? sweep(run, takes, setup, unturned) : [],
    ),
    ...(setup.kind === 'dovetail' && {
      pins: { diameter: setup.pinDiameterMm, angleDeg: setup.flankAngleDeg, form: setup.form },
    }),
    ...(setup.limit !== undefined && {
      limits: limitedFigures(kind, Object.keys(lines)).map((figure) => ({ figure, max: setup.limit! })),
    }),
  };
}

function takesOf(session: Session, run: Run, tied: ReadonlySet<string>): TakeEvent[] {
  return placementsOf(run)
    .flatMap((place) => session.counted.get(placementKey(place)) ?? [])
    .filter(({ place }) => place.at.every((name) => tied.has(name)))
    .sort((a, b) => a.seq - b.seq);
}

type Walk = NonNullable<SheetInput['walks']>[number];
type Sweep = NonNullable<SheetInput['sweeps']>[number];

function walk(run: TiltRun, takes: readonly TakeEvent[], { instrument }: Setup): Walk {
  const { graduation, sigma } = instrument;
  return {
    id: run.id,
    zero: run.zero,
    facing: run.facing,
    drift: false,
    ...(sigma !== undefined && { sigma: sigma * graduation }),
    readings: takes.map(({ place, value }) => [place.at[0], place.at[1]!, value * graduation]),
  };
}

function sweep(run: HeightRun, takes: readonly TakeEvent[], setup: Setup, unturned: boolean): Sweep {
  const { graduation, sigma } = setup.instrument;
  const { artefact } = run;
  return {
    id: run.id,
    offset: run.offset,
    slope: run.slope,
    sense: run.sense,
    ...(sigma !== undefined && { sigma: sigma * graduation }),
    // Until it has been swept turned as well, the artefact's own error can't be told from the metal.
    ...(artefact && !unturned && { artefact: artefact.name, turned: artefact.turned }),
    readings: takes.map(({ place, value }) => [place.at[0], value * graduation]),
  };
}

function limitedFigures(kind: SheetInput['kind'], lines: readonly string[]): string[] {
  if (kind === 'plate') return ['flatness.minimumZone'];
  if (kind === 'square') return ['squareness'];
  if (kind === 'dovetail') return ['parallelism'];
  const figure = kind === 'slide' ? 'parallelism' : kind === 'bar' ? 'slope' : 'straightness';
  return lines.map((line) => `${line}.${figure}`);
}

function notesOf(setup: Setup, loose: readonly string[], unturned: boolean): string {
  return [
    loose.length > 0 && `Not tied to the rest yet and left out: ${loose.join(', ')}.`,
    unturned && `The ${setup.kind} has not been turned yet: its own error is still in these figures.`,
  ]
    .filter((note) => note !== false)
    .join(' ');
}
