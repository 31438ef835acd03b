import type { SweepBy } from '../live/sweeping.ts';
import { type Placement, type Plan, placementKey, placementsOf, type Run } from '../survey/plan.ts';
import { planFor } from '../survey/plan-for.ts';
import { saidOf } from './conditions.ts';
import type { EventOf, Header, SessionEvent, TakeEvent } from './events.ts';
import { instrumentsOf, isUsed } from './instruments.ts';
import type { ReadingUnit, Setup } from './setup.ts';

/** A take with what became of it. */
export interface Taken {
  readonly event: TakeEvent;
  /** Why it does not count any more: the reason of its `void`, or that it was repeated. */
  readonly out?: string;
}

/** Everything that follows from the events so far. Plain data, never changed in place. */
export interface Session {
  readonly header: Header;
  readonly setup: Setup;
  readonly plan: Plan;
  /** The runs that are wanted now, in the order of the plan. */
  readonly runs: readonly Run[];
  /** Every placement of these runs, in the order in which they are done. */
  readonly placements: readonly Placement[];
  /** Every take in the order in which it was made, the voided and repeated ones too. */
  readonly takes: readonly Taken[];
  /** The take that counts at each placement, by `placementKey`. */
  readonly counted: ReadonlyMap<string, TakeEvent>;
  /** The walk in which the level faces the other way than planned now; null when it faces as planned. */
  readonly turnedRun: string | null;
  /** Takes, by number, of a level that faced the other way than planned. */
  readonly turnedTakes: ReadonlySet<number>;
  /** The take that counts beside the one in `counted`, where a place was read with the level facing either way. */
  readonly bothWays: ReadonlyMap<string, TakeEvent>;
  /** The person has chosen to take a steady drift off where it can be told from a bow. */
  readonly driftOff: boolean;
  readonly skipped: ReadonlyMap<string, EventOf<'skip'>>;
  /** Where the level is to be set next; null when every placement is taken or skipped. */
  readonly next: Placement | null;
  readonly notes: readonly EventOf<'note'>[];
  readonly prints: readonly EventOf<'print'>[];
  readonly gaps: readonly EventOf<'gap'>[];
  readonly discarded: number;
  readonly handsFree: boolean;
  /** The run over which the tip slides on without a stop, and whether it was marked at its first place. */
  readonly sweeping: { readonly run: string; readonly by: SweepBy; readonly begun: boolean } | null;
  /** The unit that the instrument changed to in mid-session, until somebody acknowledges it. */
  readonly unitAlarm: ReadingUnit | null;
  readonly ended: boolean;
  /** The last time that it was gone on with after a break; null when it never was broken off. */
  readonly resumed: EventOf<'resumed'> | null;
  /** Number of the last event seen. */
  readonly seq: number;
}

/** The session before its first event. */
export function begin(header: Header): Session {
  const plan = planFor(header.setup);
  const runs = plan.runs.filter(({ wanted }) => wanted);
  const placements = runs.flatMap(placementsOf);
  return {
    header,
    setup: header.setup,
    plan,
    runs,
    placements,
    takes: [],
    counted: new Map(),
    turnedRun: null,
    turnedTakes: new Set(),
    bothWays: new Map(),
    driftOff: false,
    skipped: new Map(),
    next: placements[0] ?? null,
    notes: [],
    prints: [],
    gaps: [],
    discarded: 0,
    handsFree: header.setup.handsFree,
    sweeping: null,
    unitAlarm: null,
    ended: false,
    resumed: null,
    seq: 0,
  };
}

/** The session after one more event. Events of unknown type change nothing but the number. */
export function apply(session: Session, event: SessionEvent): Session {
  const next: Session = { ...session, seq: event.seq };
  switch (event.type) {
    case 'take':
      return taken(next, event);
    case 'void':
      return voided(next, event);
    case 'skip':
      return skipped(next, event);
    case 'aim':
      return { ...next, next: event.place, sweeping: null };
    case 'run':
      return rerun(next, event);
    case 'note':
      return { ...next, notes: [...next.notes, event] };
    case 'print':
      return { ...next, prints: [...next.prints, event] };
    case 'gap':
      return {
        ...next,
        gaps: [...next.gaps, event],
        sweeping: event.from === next.setup.instrument.name ? null : next.sweeping,
      };
    case 'sweeping':
      return sweeps(next, event);
    case 'mark':
      return { ...next, sweeping: next.sweeping && { ...next.sweeping, begun: true } };
    case 'discarded':
      return { ...next, discarded: next.discarded + 1 };
    case 'conditions':
      return { ...next, setup: { ...next.setup, ...saidOf(event) } };
    case 'drift':
      return { ...next, driftOff: event.off };
    case 'turned':
      return { ...next, turnedRun: event.on ? event.run : null };
    case 'hands-free':
      return { ...next, handsFree: event.on };
    case 'unit':
      if (!isUsed(next.setup, event.from)) return next;
      return { ...next, unitAlarm: isAlarm(event, next.setup) ? event.unit : null };
    case 'resumed':
      return { ...next, ended: false, resumed: event, sweeping: null };
    case 'end':
      return { ...next, ended: true, sweeping: null };
    default:
      return next;
  }
}

/** The session after all of `events`, in order. */
export function fold(header: Header, events: Iterable<SessionEvent>): Session {
  let session = begin(header);
  for (const event of events) session = apply(session, event);
  return session;
}

function taken(session: Session, event: TakeEvent): Session {
  const key = placementKey(event.place);
  const skipped = new Map(session.skipped);
  skipped.delete(key);
  // In the next walk the level faces as that one is planned.
  const turnedRun = event.place.run === session.turnedRun ? session.turnedRun : null;
  const turnedTakes = turnedRun === null ? session.turnedTakes : new Set(session.turnedTakes).add(event.seq);
  // A place that is read again the other way round tells the zero of the level: both readings of it count.
  const isTurned = (take: TakeEvent) => turnedTakes.has(take.seq);
  const earlier = [session.counted.get(key), session.bothWays.get(key)].filter((take) => take !== undefined);
  const repeated = new Set(
    earlier.filter((take) => isTurned(take) === isTurned(event)).map(({ seq }) => seq),
  );
  const beside = earlier.find(({ seq }) => !repeated.has(seq));
  const takes = session.takes.map((take) =>
    repeated.has(take.event.seq) ? { ...take, out: 'repeated' } : take,
  );
  const counted = new Map(session.counted).set(key, event);
  const bothWays = beside ? new Map(session.bothWays).set(key, beside) : session.bothWays;
  return stillSweeping(
    withNext(
      { ...session, takes: [...takes, { event }], counted, bothWays, skipped, turnedRun, turnedTakes },
      event.place,
    ),
    event,
  );
}

/** Nothing is taken without a hand while the tip slides on, nor when it has slid beyond the last place. */
function sweeps(session: Session, { run, by }: EventOf<'sweeping'>): Session {
  if (by === 'off') return { ...session, sweeping: null };
  return { ...session, handsFree: false, sweeping: { run, by, begun: false } };
}

/** A sweep is over with the last place of its run, and with any take by other means. */
function stillSweeping(session: Session, { swept, place }: TakeEvent): Session {
  const run = session.plan.runs.find(({ id }) => id === session.sweeping?.run);
  const last = run && placementsOf(run).at(-1)!;
  const goes = swept && last && placementKey(last) !== placementKey(place) && session.next?.run === run.id;
  return goes ? session : { ...session, sweeping: null };
}

function voided(session: Session, event: EventOf<'void'>): Session {
  const target = session.takes.find((take) => take.event.seq === event.take);
  if (!target) return session;
  const takes = session.takes.map((take) => (take === target ? { ...take, out: event.reason } : take));
  const counted = new Map(session.counted);
  const bothWays = new Map(session.bothWays);
  const key = placementKey(target.event.place);
  const beside = bothWays.get(key);
  if (counted.get(key)?.seq === event.take) counted.delete(key);
  if (beside) {
    bothWays.delete(key);
    if (beside.seq !== event.take) counted.set(key, beside);
  }
  return { ...session, takes, counted, bothWays, next: target.event.place, sweeping: null };
}

/** A skipped place counts nothing: what was taken there before is out for the same reason. */
function skipped(session: Session, event: EventOf<'skip'>): Session {
  const key = placementKey(event.place);
  const takes = session.takes.map((take) =>
    take.out === undefined && placementKey(take.event.place) === key ? { ...take, out: event.reason } : take,
  );
  const counted = new Map(session.counted);
  const bothWays = new Map(session.bothWays);
  counted.delete(key);
  bothWays.delete(key);
  const skipped = new Map(session.skipped).set(key, event);
  return withNext({ ...session, takes, counted, bothWays, skipped, sweeping: null }, event.place);
}

/** Switching back to the unit of the set-up is as good as having seen the change. */
function isAlarm({ acknowledged, unit, from }: EventOf<'unit'>, setup: Setup): boolean {
  return !acknowledged && unit !== instrumentsOf(setup).find(({ name }) => name === from)?.unit;
}

/** The session with one run more or less. A run that was added comes next. */
function rerun(session: Session, { run, on }: EventOf<'run'>): Session {
  const wanted = new Set(session.runs.map(({ id }) => id));
  if (on) wanted.add(run);
  else wanted.delete(run);
  const runs = session.plan.runs.filter(({ id }) => wanted.has(id));
  const placements = runs.flatMap(placementsOf);
  const changed = { ...session, runs, placements, sweeping: null };
  const first = placements.find((place) => (on ? place.run === run : true) && isOpen(changed, place));
  const stays = session.next !== null && wanted.has(session.next.run) && !on;
  return { ...changed, next: stays ? session.next : (first ?? null) };
}

function isOpen(session: Session, place: Placement): boolean {
  const key = placementKey(place);
  return !session.counted.has(key) && !session.skipped.has(key);
}

/** The next open placement after `place` in the order of the plan, else the first open one before it. */
function withNext(session: Session, place: Placement): Session {
  const at = session.placements.findIndex((other) => placementKey(other) === placementKey(place));
  const open = (other: Placement) => isOpen(session, other);
  const next = session.placements.slice(at + 1).find(open) ?? session.placements.find(open) ?? null;
  return { ...session, next };
}
