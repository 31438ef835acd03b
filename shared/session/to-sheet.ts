import { adjust } from '../adjust/adjust.ts';
import { isWayscribeError } from '../errors.ts';
import { type SheetInput, validateSheet } from '../sheet/sheet.ts';
import { placeWords } from '../survey/plan.ts';
import type { TakeEvent } from './events.ts';
import type { Session } from './fold.ts';
import { type Measured, measured } from './measured.ts';
import { referenceNote, sigmaWith } from './referenced.ts';
import type { Setup } from './setup.ts';
import { countsOf, isTilt, sagOf, sweepOf, walkOf, withDrift } from './sheet-runs.ts';
import { sigmaOfTakes, sweptNote } from './swept.ts';
import { takenRuns, withoutNewest } from './taken-runs.ts';
import { inSegments, isTurnedIn, longerSegment } from './turned-level.ts';
import { type TurnedOver, turnedOver } from './turned-over.ts';

/** Choices of a person about how what was read is to be understood; what is left out is as it was chosen in the session. */
export interface SheetOptions {
  /** Take a steady drift off the walks of every line that was walked out and back with the level facing alike. */
  readonly drift?: boolean;
}

/**
 * The sheet that a session boils down to: what counts of it, and nothing else.
 *
 * Readings of a walk stand in the order in which they were taken, because a drift runs along that order; those of a
 * sweep from its first station on, because its slope does. They are written as the instrument showed them (times the
 * size of its graduation); where their standard deviation is not known, in µm/m or µm, so that 1 of these is assumed
 * whatever the instrument counts in. A survey that is half done has a sheet of its own: with what is tied together so
 * far and whose slope is known, and a note that says what is missing.
 */
export function toSheet(session: Session, options: SheetOptions = {}): SheetInput {
  for (let taken = takenRuns(session); ; taken = withoutNewest(taken)) {
    const used = turnedOver(taken);
    const sheet = sheetOf(session, used, measured(session, used.taken), options);
    if (isDetermined(sheet)) return sheet;
    if (taken.length > 1) continue;
    // The zero of a level that was turned in the middle of its only walk looks like a kink there: one part stands alone.
    if (!taken[0] || !isTurnedIn(taken[0], session)) return sheet;
    const part = { ...used, taken: [longerSegment(taken[0], session)] };
    return sheetOf(session, part, measured(session, part.taken), options);
  }
}

/** A line that hangs on one station has a slope of its own that nothing tells: it waits until it hangs on a second. */
function isDetermined(sheet: SheetInput): boolean {
  try {
    adjust(validateSheet(sheet));
    return true;
  } catch (error) {
    return !(isWayscribeError(error) && error.code === 'adjust.notDetermined');
  }
}

function sheetOf(
  session: Session,
  { taken, told, untold }: TurnedOver,
  { kind, stations, lines }: Measured,
  { drift = session.driftOff }: SheetOptions,
): SheetInput {
  const { setup } = session;
  const names = new Set(stations.map(({ name }) => name));
  const tied = taken
    .map(({ run, takes }) => ({
      run,
      takes: takes.filter(({ place }) => place.at.every((at) => names.has(at))),
    }))
    .filter(({ takes }) => takes.length > 0);
  const { runs: walked, drifting } = drift
    ? withDrift(tied, session)
    : { runs: tied, drifting: new Set<string>() };
  const runs = inSegments(walked, session);
  const { unit, factor } = countsOf(setup);
  const used = tied.flatMap(({ takes }) => takes);
  const more = [referenceNote(session, tied), sweptNote(session, used)];
  const notes = notesOf(session, names, untold, [...drifting], more);
  const sag = sagOf(session, unit);
  return {
    sheet: 1,
    kind,
    title: `${setup.part}, ${setup.surface}, ${setup.round}`,
    part: setup.part,
    phase: setup.round,
    ...(notes && { notes }),
    units: { length: 'mm', ...(isTilt(unit) ? { tilt: unit } : { height: unit }) },
    stations: Object.fromEntries(
      stations.map(({ name, xMm, yMm }) => [name, [xMm, yMm] as [number, number]]),
    ),
    lines,
    walks: runs.flatMap(({ run, takes }) =>
      run.reads === 'tilt'
        ? { ...walkOf(run, takes, factor, sigmaWith(session, run, takes)), drift: drifting.has(run.id) }
        : [],
    ),
    sweeps: runs.flatMap(({ run, takes }) =>
      run.reads === 'height'
        ? sweepOf(run, takes, factor, sigmaOfTakes(session, takes, setup.instrument.sigma), { told, sag })
        : [],
    ),
    ...(setup.kind === 'dovetail' && {
      pins: { diameter: setup.pinDiameterMm, angleDeg: setup.flankAngleDeg, form: setup.form },
    }),
    ...limitsOf(setup, kind, Object.keys(lines)),
  };
}

function placeOfTake({ place }: TakeEvent): string {
  return placeWords(place);
}

function limitsOf({ kind: asked, limit }: Setup, kind: SheetInput['kind'], lines: readonly string[]) {
  // One line of a plate says nothing of its flatness.
  if (limit === undefined || (asked === 'plate' && kind !== 'plate')) return {};
  return { limits: limitedFigures(kind, lines).map((figure) => ({ figure, max: limit })) };
}

function limitedFigures(kind: SheetInput['kind'], lines: readonly string[]): string[] {
  if (kind === 'plate') return ['flatness.minimumZone'];
  if (kind === 'square') return ['squareness'];
  if (kind === 'dovetail') return ['parallelism'];
  if (kind === 'repeat') return ['repeatReading'];
  if (kind === 'collars') return ['taper'];
  if (kind === 'face') return ['hollow'];
  const figure = kind === 'slide' ? 'parallelism' : kind === 'bar' ? 'slope' : 'straightness';
  return lines.map((line) => `${line}.${figure}`);
}

function notesOf(
  { setup, counted, takes, turnedTakes }: Session,
  used: ReadonlySet<string>,
  untold: readonly string[],
  drifting: readonly string[],
  more: readonly (string | null)[],
): string {
  const left = new Set(
    [...counted.values()].flatMap(({ place }) => place.at).filter((name) => !used.has(name)),
  );
  const turned = takes
    .filter(({ event, out }) => out === undefined && turnedTakes.has(event.seq))
    .map(({ event }) => placeOfTake(event));
  return [
    ...more,
    left.size > 0 && `Not tied to the rest yet and left out: ${[...left].join(', ')}.`,
    ...untold.map((name) => `The ${name} has not been turned yet: its own error is still in these figures.`),
    drifting.length > 0 && `A steady drift of the zero is taken off, by choice: ${drifting.join(', ')}.`,
    turned.length > 0 && `Read with the level turned in mid-walk: ${turned.join(', ')}.`,
    setup.kind === 'bar' &&
      setup.sagUm > 0 &&
      setup.planes !== 'side' &&
      `The bar hangs down by ${setup.sagUm} µm at its far station: the readings on top are corrected for that.`,
  ]
    .filter((note) => note !== false && note !== null)
    .join(' ');
}
