import type { Placement, Run, TiltRun } from '../survey/plan.ts';
import { unitFactor } from '../units.ts';
import type { TakeEvent } from './events.ts';
import type { Session } from './fold.ts';
import { referenceOf } from './instruments.ts';
import type { Setup } from './setup.ts';
import type { TakenRun } from './taken-run.ts';

/**
 * A level that stays put tells how the part itself tilts while it is measured. How far it has gone since the first
 * take is taken off every reading along its own direction; a reading across it can't be helped by it and stays as it
 * is. On record are both as they read: the difference is made here and nowhere else.
 */

/** Runs with the reference level taken off; unchanged when there is none. */
export function referenced(session: Session, taken: readonly TakenRun[]): TakenRun[] {
  const first = firstReference(taken);
  if (first === null) return [...taken];
  return taken.map(({ run, takes }) => ({
    run,
    takes: takes.map((take) => {
      const off = run.reads === 'tilt' ? offOf(session, run, take, first) : null;
      return off === null ? take : { ...take, value: take.value - off };
    }),
  }));
}

/** Whether the reference level tells anything of the readings at this placement: they lie along it. */
function isAlong({ setup, plan }: Pick<Session, 'setup' | 'plan'>, { at }: Placement): boolean {
  return alongOf(setup, plan, at) !== 0;
}

/**
 * Standard deviation of one reading with the reference level taken off, in counts of the level that is moved: both
 * are independent. What the reference was proved to scatter by counts; if that was not done, the root mean square of
 * its scatter at the takes. Undefined when that of the level that is moved is not known.
 */
export function sigmaWith(session: Session, run: Run, takes: readonly TakeEvent[]): number | undefined {
  const { setup } = session;
  const { sigma } = setup.instrument;
  const reference = referenceOf(setup);
  const helped = takes.filter((take) => take.reference && isAlong(session, take.place));
  if (sigma === undefined || !reference || run.reads !== 'tilt' || helped.length === 0) return sigma;
  const squares = helped.reduce((sum, take) => sum + take.reference!.spread ** 2, 0);
  const own = reference.level.sigma ?? Math.sqrt(squares / helped.length);
  return Math.hypot(sigma, own * countsPerCount(setup));
}

/** What is said of it beside a result: null when no reading is held against a reference level. */
export function referenceNote(session: Session, taken: readonly TakenRun[]): string | null {
  const reference = referenceOf(session.setup);
  if (!reference) return null;
  const tilts = taken.filter(({ run }) => run.reads === 'tilt').flatMap(({ takes }) => takes);
  const helped = tilts.filter((take) => take.reference && isAlong(session, take.place));
  if (helped.length === 0) return null;
  const across = tilts.length - helped.length;
  const rest = across > 0 ? ` The ${across} readings that lie across it stay as they are.` : '';
  return `How far the reference level ${reference.level.name} went since the first take is taken off ${helped.length} readings, at matched times.${rest}`;
}

/** The first take, in time, that was held against the reference level. */
function firstReference(taken: readonly TakenRun[]): number | null {
  const held = taken.flatMap(({ takes }) => takes.filter(({ reference }) => reference));
  const first = held.reduce<TakeEvent | null>((a, b) => (a === null || b.seq < a.seq ? b : a), null);
  return first?.reference?.value ?? null;
}

/** What to take off a reading, in counts of the level that is moved; null when nothing can be. */
function offOf(session: Session, run: TiltRun, take: TakeEvent, first: number): number | null {
  const along = alongOf(session.setup, session.plan, take.place.at);
  if (!take.reference || along === 0) return null;
  const facing = session.turnedTakes.has(take.seq) ? -run.facing : run.facing;
  return facing * along * (take.reference.value - first) * countsPerCount(session.setup);
}

/** +1 when a positive reference says that the second foot of the placement goes up, −1 the contrary, 0 across it. */
function alongOf(setup: Setup, { stations }: Session['plan'], at: Placement['at']): 1 | -1 | 0 {
  const reference = referenceOf(setup);
  const [from, to] = at.map((name) => stations.find((station) => station.name === name));
  if (!reference || !from || !to) return 0;
  const [dx, dy] = [to.xMm - from.xMm, to.yMm - from.yMm];
  const onX = reference.faces === 'far' || reference.faces === 'start';
  const [along, across] = onX ? [dx, dy] : [dy, dx];
  // A tilt of the part has two components, and a level tells the one along it.
  if (Math.abs(across) > 1e-6 * Math.abs(along)) return 0;
  const plus = reference.faces === 'far' || reference.faces === 'rear' ? 1 : -1;
  return along * plus > 0 ? 1 : -1;
}

/** One count of the reference level in counts of the level that is moved. */
function countsPerCount(setup: Setup): number {
  const { level } = referenceOf(setup)!;
  const size = ({ unit, graduation }: Setup['instrument']) => graduation * unitFactor('tilt', unit);
  return size(level) / size(setup.instrument);
}
