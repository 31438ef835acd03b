import { Subject } from 'rxjs';
import { isWayscribeError, WayscribeError } from '../../shared/errors.ts';
import type { Window } from '../../shared/live/steadiness.ts';
import type { SweepBy } from '../../shared/live/sweeping.ts';
import { parseTyped } from '../../shared/live/typed.ts';
import type { Command } from '../../shared/messages.ts';
import {
  type Header,
  isKept,
  type NewEvent,
  type SessionEvent,
  type Stamp,
  type TakenBy,
} from '../../shared/session/events.ts';
import { apply, begin, type Session } from '../../shared/session/fold.ts';
import { typedDoubt } from '../../shared/session/typed-doubt.ts';
import { canSweep, type Placement, placementKey, placementsOf, wayOf } from '../../shared/survey/plan.ts';
import { stampNow } from '../ports/port.ts';
import type { Needle, NeedleNow } from './needle.ts';
import type { Reference } from './reference.ts';
import { allTaken, referenceRefusal, refusalOf } from './refusal.ts';
import { eventOf, type SayingCommand } from './saying.ts';
import { type Station, Sweeping } from './sweeping.ts';
import { Turns } from './turns.ts';

/** Commands to the session that is on. */
export type SessionCommand = SayingCommand | Extract<Command, { do: 'take' | 'type' | 'sweep' | 'finish' }>;

/** Where a session goes on record: a recording on disk, or in a test, memory. */
export interface Recorder {
  append(event: NewEvent, stamp: Stamp, how: { durable: boolean }): Promise<SessionEvent>;
  close(): Promise<void>;
}

/**
 * Keeps one session: turns commands and steady readings into events, has each one written and synced, and
 * only then lets anybody see it. The state is nothing but the fold of the events so far.
 */
export class Keeper {
  /** Events that are on record, without the stream of readings. */
  readonly events$ = new Subject<SessionEvent>();
  /** What went wrong without anybody having asked: a take that was due, a disk that is full. */
  readonly refused$ = new Subject<WayscribeError>();
  readonly #recorder: Recorder;
  readonly #now: () => Stamp;
  readonly #kept: SessionEvent[] = [];
  #session: Session;
  /** The instrument that is moved, and the others. */
  #needle: Needle | null = null;
  #others: readonly Needle[] = [];
  #reference: Reference | null = null;
  /** While the tip slides on without a stop. */
  #sweeping: Sweeping | null = null;
  /** What was refused last without anybody having asked: told once, not at every reading. */
  #told: string | null = null;
  readonly #turns = new Turns();
  #troubled = false;

  constructor(header: Header, events: readonly SessionEvent[], recorder: Recorder, now = stampNow) {
    this.#recorder = recorder;
    this.#now = now;
    this.#session = begin(header);
    for (const event of events) this.#fold(event);
  }

  get session(): Session {
    return this.#session;
  }

  /** Every event so far but the stream of readings. */
  get kept(): readonly SessionEvent[] {
    return this.#kept;
  }

  /** The instrument of the session, if it has one on a cable, and those that listen along. */
  use(needle: Needle, others: readonly Needle[] = [], reference: Reference | null = null): void {
    this.#needle = needle;
    this.#others = others;
    this.#reference = reference;
    needle.due$.subscribe((due) => {
      const { handsFree, next } = this.#session;
      if (this.#over || this.#sweeping || (!needle.byButton && (!handsFree || !next))) return;
      const taking = needle.byButton ? () => this.#takePressed(due) : () => this.#takeDue(next!);
      this.#turns.take(taking).catch((error) => this.#refuseDue(error, needle.byButton));
    });
  }

  /** Whether an event stands behind which nothing may come. */
  get #over(): boolean {
    const last = this.#kept.at(-1)?.type;
    return last === 'end' || last === 'aside';
  }

  /** Puts an event on record; the promise holds it once it is in the file, synced unless a stream reading. */
  async record(event: NewEvent, stamp: Stamp = this.#now()): Promise<SessionEvent> {
    if (this.#over && event.type !== 'resumed') throw notOn(this.#session.ended);
    try {
      const written = await this.#recorder.append(event, stamp, { durable: event.type !== 'reading' });
      this.#troubled = false;
      this.#fold(written);
      if (isKept(written)) this.events$.next(written);
      return written;
    } catch (error) {
      // A stream of failures is told once.
      if (!this.#troubled) this.#refuse(error);
      this.#troubled = true;
      throw error;
    }
  }

  /**
   * Does what a person asked, after what was asked before.
   * @throws WayscribeError with the reason and what helps, when it can't be done
   */
  async obey(command: SessionCommand): Promise<void> {
    await this.#turns.take(() => this.#obey(command));
  }

  /** Puts the session aside, to go on with it later. */
  async setAside(): Promise<void> {
    await this.#turns.take(async () => {
      if (!this.#over) await this.#last({ type: 'aside' });
    });
  }

  async close(): Promise<void> {
    this.#sweepNoMore();
    for (const needle of this.#needles) needle.stop();
    await this.#turns.idle();
    await this.#recorder.close();
    this.events$.complete();
    this.refused$.complete();
  }

  #fold(event: SessionEvent): void {
    const before = this.#session.next;
    this.#session = apply(this.#session, event);
    if (isKept(event)) this.#kept.push(event);
    if (this.#session.sweeping === null) this.#sweepNoMore();
    // Behind a take the needle is spent anyway; a movement felt while it was being written is one to the next place.
    if (event.type !== 'take' && !isSame(before, this.#session.next)) this.#needle?.lookElsewhere();
  }

  get #needles(): readonly Needle[] {
    return this.#needle ? [this.#needle, ...this.#others] : [];
  }

  /** A take without a hand stays due at every reading: the same reason is told once. A button was pressed each time. */
  #refuseDue(error: unknown, each: boolean): void {
    const reason = String(error);
    if (each || reason !== this.#told) this.#refuse(error);
    this.#told = reason;
  }

  #refuse(error: unknown): void {
    if (isWayscribeError(error)) this.refused$.next(error);
    else console.error(error);
  }

  async #obey(command: SessionCommand): Promise<void> {
    const session = this.#session;
    if (this.#over) throw notOn(session.ended);
    switch (command.do) {
      case 'take':
        if (session.sweeping && this.#sweeping) return this.#mark(this.#sweeping, command.by);
        return this.#take(command.by, command.insist);
      case 'sweep':
        return this.#sweep(command.by);
      case 'type':
        return this.#type(command.text, command.again, command.keyed);
      case 'finish':
        return this.#last({ type: 'end' });
      default: {
        const event = eventOf(command, session);
        if (event) await this.record(event);
      }
    }
  }

  /** From here on the tip slides over the run without a stop, or does so no more. */
  async #sweep(by: SweepBy | 'off'): Promise<void> {
    const { next, sweeping, plan } = this.#session;
    const run = plan.runs.find(({ id }) => id === (by === 'off' ? sweeping?.run : next?.run));
    if (by === 'off') {
      if (run) await this.record({ type: 'sweeping', run: run.id, by });
      return;
    }
    const needle = this.#needle;
    if (!run || !canSweep(run) || !needle || needle.byButton) {
      throw new WayscribeError(
        'command.refused',
        'sweep',
        'only an indicator that speaks by itself can be swept on without a stop',
        'read place by place',
      );
    }
    await this.record({ type: 'sweeping', run: run.id, by });
    this.#sweepNoMore();
    this.#sweeping = new Sweeping(run.id, by, needle, {
      passed: (stations) =>
        void this.#turns.take(() => this.#passed(stations)).catch((error) => this.#refuse(error)),
      broken: (why) => {
        this.#refuse(why);
        const off = async () => {
          if (this.#session.sweeping) await this.record({ type: 'sweeping', run: run.id, by: 'off' });
        };
        void this.#turns.take(off).catch((error) => this.#refuse(error));
      },
    });
  }

  #sweepNoMore(): void {
    this.#sweeping?.stop();
    this.#sweeping = null;
  }

  /** The tip passes the next place now. At an even pace it goes from there to the last place of the run. */
  async #mark(sweeping: Sweeping, by: TakenBy): Promise<void> {
    const { next, plan, unitAlarm } = this.#session;
    const now = this.#needle?.now ?? null;
    const refusal = refusalOf({ next, unitAlarm, now, insist: true }) ?? sweeping.refusal(next!);
    if (refusal) throw refusal;
    const stamp = this.#now();
    const places = placementsOf(plan.runs.find(({ id }) => id === sweeping.run)!);
    const rest = places.slice(places.findIndex((place) => isSame(place, next)));
    const place = sweeping.by === 'even' && sweeping.begun ? rest.at(-1)! : next!;
    await this.record({ type: 'mark', place }, stamp);
    sweeping.mark(rest, { m: stamp.m, by });
  }

  /** Stations that were passed are takes, each on record before the next. */
  async #passed(stations: readonly Station[]): Promise<void> {
    for (const { place, atM, passed, by } of stations) {
      const sweeping = this.#session.sweeping;
      const run = this.#session.plan.runs.find(({ id }) => id === place.run);
      if (!sweeping || run?.reads !== 'height') return;
      const { value, spread, readings, count } = passed;
      const swept = { by: sweeping.by, way: wayOf(this.#session.plan, run), atM } as const;
      const how = { value, spread, readings: [...readings] as [number, number], count, by, steadiness: null };
      await this.record(this.#takeEvent(place, { ...how, swept }));
    }
  }

  /** Records an event behind which no reading comes any more. */
  async #last(event: NewEvent): Promise<void> {
    const listen = (on: boolean) => {
      for (const needle of this.#needles) needle.listen(on);
    };
    listen(false);
    await this.record(event).catch((error) => {
      listen(true);
      throw error;
    });
  }

  /** Makes the take that was due at `place`, unless something came before it in the meantime. */
  async #takeDue(place: Placement): Promise<void> {
    const { handsFree, next } = this.#session;
    const now = this.#needle?.now;
    const stands = now?.moved === true && now.window.steadiness === 'steady';
    if (!handsFree || this.#over || !stands || !isSame(next, place)) return;
    await this.#take('hands-free', false);
  }

  /** Makes the take that somebody asked for with the instrument's own button. */
  async #takePressed(due: NeedleNow): Promise<void> {
    if (!this.#over) await this.#take('instrument', false, due);
  }

  async #take(
    by: TakenBy,
    insist: boolean,
    now: NeedleNow | null = this.#needle?.now ?? null,
  ): Promise<void> {
    const { next, unitAlarm } = this.#session;
    const byButton = this.#needle?.byButton ?? false;
    const refusal = refusalOf({ next, unitAlarm, now, byButton, insist });
    if (refusal) throw refusal;
    const { window } = now!;
    this.#needle!.spend();
    try {
      const reference = this.#reference && (await this.#matched(this.#reference, window, next!, insist));
      await this.record(
        this.#takeEvent(next!, {
          value: window.mean!,
          spread: window.spread,
          readings: [window.samples[0]!.seq, window.samples.at(-1)!.seq],
          count: window.samples.length,
          by,
          steadiness: window.spread === null ? null : window.steadiness,
          ...(reference && { reference }),
        }),
      );
      this.#told = null;
    } catch (error) {
      this.#needle?.rearm();
      throw error;
    }
  }

  /** What the reference level said at the times of these readings. */
  async #matched(reference: Reference, { samples }: Window, next: Placement, insist: boolean) {
    const refusal = referenceRefusal(reference, next, { insist });
    if (refusal) throw refusal;
    const matched = await reference.at(samples.map(({ m }) => m));
    if (!matched) throw referenceRefusal(reference, next, { insist, late: true });
    const { value, spread, readings } = matched;
    const from = reference.needle.instrument.name;
    return { from, value, spread, readings: [...readings] as [number, number] };
  }

  async #type(text: string, again: boolean, keyed?: [number, number]): Promise<void> {
    const value = parseTyped(text);
    const { next, setup } = this.#session;
    if (setup.instrument.source !== 'typed') {
      throw new WayscribeError(
        'command.refused',
        'reading',
        'this level is read from its cable',
        'press Take',
      );
    }
    if (!next) throw allTaken();
    const doubt = typedDoubt(this.#session, next, value, text.trim());
    if (doubt && !again) throw doubt;
    const typed = { value, spread: null, readings: null, count: 1, steadiness: null } as const;
    const by = keyed ? ({ by: 'instrument', keyed } as const) : ({ by: 'typed' } as const);
    const sentAgain = doubt ? ({ sentAgain: true } as const) : {};
    await this.record(this.#takeEvent(next, { ...typed, ...by, raw: text.trim(), ...sentAgain }));
  }

  #takeEvent(
    place: Placement,
    how: Omit<Extract<NewEvent, { type: 'take' }>, 'type' | 'place' | 'from'>,
  ): NewEvent {
    const earlier = this.#session.counted.get(placementKey(place));
    return {
      type: 'take',
      place,
      from: this.#session.setup.instrument.name,
      ...how,
      ...(earlier && { replaces: earlier.seq }),
    };
  }
}

function isSame(a: Placement | null, b: Placement | null): boolean {
  return (a && placementKey(a)) === (b && placementKey(b));
}

function notOn(ended: boolean): WayscribeError {
  const what = ended ? 'the survey is finished' : 'the survey was put aside';
  return new WayscribeError('command.refused', 'session', what, 'go on with it first');
}
