import { Subject } from 'rxjs';
import { isWayscribeError, WayscribeError } from '../../shared/errors.ts';
import { parseTyped } from '../../shared/live/typed.ts';
import type { Command } from '../../shared/messages.ts';
import { saidOf } from '../../shared/session/conditions.ts';
import { linesThatTellDrift } from '../../shared/session/drift-choice.ts';
import {
  type Header,
  isKept,
  type NewEvent,
  type SessionEvent,
  type Stamp,
  type TakenBy,
} from '../../shared/session/events.ts';
import { apply, begin, type Session } from '../../shared/session/fold.ts';
import { type Placement, placementKey } from '../../shared/survey/plan.ts';
import { stampNow } from '../ports/port.ts';
import type { Needle } from './needle.ts';
import { allTaken, refusalOf } from './refusal.ts';
import { Turns } from './turns.ts';

/** Commands that become events of the session that is on. */
export type SessionCommand = Extract<
  Command,
  {
    do:
      | 'take'
      | 'type'
      | 'void'
      | 'aim'
      | 'skip'
      | 'note'
      | 'print'
      | 'conditions'
      | 'hands-free'
      | 'run'
      | 'take-drift-off'
      | 'turned'
      | 'acknowledge-unit'
      | 'finish';
  }
>;

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
  #needle: Needle | null = null;
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

  /** The instrument of the session, if it has one on a cable. */
  use(needle: Needle): void {
    this.#needle = needle;
    needle.due$.subscribe(() => {
      if (!this.#session.handsFree || this.#session.ended || !this.#session.next) return;
      this.#turns.take(() => this.#take('hands-free', false)).catch((error) => this.#refuse(error));
    });
  }

  /** Puts an event on record; the promise holds it once it is in the file, synced unless a stream reading. */
  async record(event: NewEvent, stamp: Stamp = this.#now()): Promise<SessionEvent> {
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
    if (!this.#session.ended) await this.#turns.take(() => this.#last({ type: 'aside' }));
  }

  async close(): Promise<void> {
    this.#needle?.stop();
    await this.#turns.idle();
    await this.#recorder.close();
    this.events$.complete();
    this.refused$.complete();
  }

  #fold(event: SessionEvent): void {
    this.#session = apply(this.#session, event);
    if (isKept(event)) this.#kept.push(event);
  }

  #refuse(error: unknown): void {
    if (isWayscribeError(error)) this.refused$.next(error);
    else console.error(error);
  }

  async #obey(command: SessionCommand): Promise<void> {
    const session = this.#session;
    if (session.ended && command.do !== 'note') {
      throw new WayscribeError('command.refused', 'session', 'the survey is finished', 'go on with it first');
    }
    switch (command.do) {
      case 'take':
        return this.#take(command.by, command.insist);
      case 'type':
        return this.#type(command.text);
      case 'void': {
        const take = session.takes.find(({ event }) => event.seq === command.take);
        if (!take || take.out !== undefined) {
          throw new WayscribeError('take.place', `take ${command.take}`, 'there is no such take that counts');
        }
        return void (await this.record({ type: 'void', take: command.take, reason: command.reason }));
      }
      case 'aim':
        return void (await this.record({ type: 'aim', place: this.#planned(command.place) }));
      case 'skip':
        return void (await this.record({
          type: 'skip',
          place: this.#planned(command.place),
          reason: command.reason,
        }));
      case 'note': {
        const { text, place } = command;
        return void (await this.record({ type: 'note', text, ...(place && { place }) }));
      }
      case 'print': {
        const { do: _, ...print } = command;
        const unknown = Object.keys(print.stations).find(
          (name) => !session.plan.stations.some((station) => station.name === name),
        );
        if (unknown !== undefined)
          throw new WayscribeError('take.place', unknown, 'is no station of this survey');
        return void (await this.record({ type: 'print', ...print }));
      }
      case 'conditions':
        return void (await this.record({ type: 'conditions', ...saidOf(command) }));
      case 'take-drift-off':
        if (command.off && linesThatTellDrift(session).length === 0) {
          throw new WayscribeError(
            'command.refused',
            'drift',
            'a drift can’t be told from a bow here',
            'walk a line out and back with the level facing alike',
          );
        }
        return void (await this.record({ type: 'drift', off: command.off }));
      case 'turned': {
        const run = session.next && session.runs.find(({ id }) => id === session.next!.run);
        if (run?.reads !== 'tilt') {
          throw new WayscribeError('command.refused', 'level', 'no level is walked now', 'read on');
        }
        return void (await this.record({ type: 'turned', run: run.id, on: session.turnedRun !== run.id }));
      }
      case 'hands-free':
        return void (await this.record({ type: 'hands-free', on: command.on }));
      case 'run': {
        const { run, on } = command;
        if (!session.plan.runs.some(({ id }) => id === run)) {
          throw new WayscribeError('take.place', run, 'is no run of this survey');
        }
        return void (await this.record({ type: 'run', run, on }));
      }
      case 'acknowledge-unit':
        if (session.unitAlarm === null) return;
        return void (await this.record({
          type: 'unit',
          from: session.setup.instrument.name,
          unit: session.unitAlarm,
          acknowledged: true,
        }));
      case 'finish':
        return this.#last({ type: 'end' });
    }
  }

  /** Records an event behind which no reading comes any more. */
  async #last(event: NewEvent): Promise<void> {
    this.#needle?.listen(false);
    await this.record(event).catch((error) => {
      this.#needle?.listen(true);
      throw error;
    });
  }

  async #take(by: TakenBy, insist: boolean): Promise<void> {
    const { next, unitAlarm } = this.#session;
    const now = this.#needle?.now ?? null;
    const refusal = refusalOf({ next, unitAlarm, now, insist });
    if (refusal) throw refusal;
    const { window } = now!;
    this.#needle!.spend();
    const event = this.#takeEvent(next!, {
      value: window.mean!,
      spread: window.spread,
      readings: [window.samples[0]!.seq, window.samples.at(-1)!.seq],
      count: window.samples.length,
      by,
      steadiness: window.steadiness,
    });
    await this.record(event).catch((error) => {
      this.#needle?.rearm();
      throw error;
    });
  }

  async #type(text: string): Promise<void> {
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
    const typed = { value, spread: null, readings: null, count: 1, by: 'typed', steadiness: null } as const;
    await this.record(this.#takeEvent(next, { ...typed, raw: text.trim() }));
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

  #planned(place: Placement): Placement {
    const key = placementKey(place);
    if (this.#session.placements.some((other) => placementKey(other) === key)) return place;
    throw new WayscribeError('take.place', key, 'is no placement of this survey');
  }
}
