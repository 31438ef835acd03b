import { Subject, type Subscription } from 'rxjs';
import { channelFor } from '../../protocols/channels.ts';
import type { Channel, Profile } from '../../protocols/profile.ts';
import { converted } from '../../protocols/quantities.ts';
import { armed, feel, type HandsFree, spent } from '../../shared/live/hands-free.ts';
import {
  emptyWindow,
  observeAll,
  type Sample,
  type SteadyLimits,
  type Window,
} from '../../shared/live/steadiness.ts';
import type { Live } from '../../shared/messages.ts';
import type { NewEvent, ReadingState, SessionEvent, Stamp } from '../../shared/session/events.ts';
import type { InstrumentSetup, ReadingUnit } from '../../shared/session/setup.ts';
import type { Instrument, Reading } from '../instruments/instrument.ts';

/** Puts an event on record and hands it back once it is in the file. */
export type Record = (event: NewEvent, stamp: Stamp) => Promise<SessionEvent>;

/** With more samples than this in its window, which no instrument of a shop sends, it is judged only so often, ms. */
const crowded = 2000;
const crowdedEveryMs = 20;

/** A reading that is on record. */
interface Written {
  readonly value: number | null;
  readonly state: ReadingState;
  readonly seq: number;
  readonly m: number;
}

/**
 * The needle of one instrument in one session: readings go on record, then into the rolling window, then
 * to the pages. It says when a take is due without a hand, and what a take would hold.
 */
export class Needle {
  readonly live$ = new Subject<Live>();
  /** A steady reading after a felt movement. */
  readonly due$ = new Subject<void>();
  readonly instrument: Instrument;
  /** The one of its values that the needle shows. */
  readonly #channel: Channel;
  /** Unit in which the session counts. */
  readonly #unit: ReadingUnit;
  readonly #limits: SteadyLimits;
  readonly #record: Record;
  readonly #subscription: Subscription;
  #window: Window = emptyWindow;
  #arrived: Written[] = [];
  #handsFree: HandsFree;
  #state: ReadingState = 'ok';
  #flowing = false;
  #listens = true;
  /** Unit in which the instrument spoke last, when it names one. */
  #spoken: ReadingUnit;

  constructor(instrument: Instrument, setup: InstrumentSetup, record: Record, handsFree: HandsFree) {
    this.instrument = instrument;
    this.#unit = setup.unit;
    this.#spoken = setup.unit;
    this.#channel = channelFor(instrument.profile, setup.unit, setup.channel);
    this.#limits = limitsFor(instrument.profile, this.#channel, setup);
    this.#record = record;
    this.#handsFree = handsFree;
    this.#subscription = instrument.readings$.subscribe((reading) => {
      if (reading.decoded.channel === this.#channel.name) void this.#reading(reading);
    });
    this.#subscription.add(
      instrument.discarded$.subscribe(({ raw, why, stamp }) => {
        const hex = Buffer.from(raw.slice(0, 512), 'latin1').toString('hex');
        this.#put({ type: 'discarded', from: instrument.name, hex, why }, stamp);
      }),
    );
    this.#subscription.add(
      instrument.gaps$.subscribe(({ is, why, stamp }) => {
        this.#flowing = is === 'back';
        this.#window = emptyWindow;
        // Nobody knows what became of the instrument meanwhile: it is to be set down anew.
        this.#handsFree = spent;
        this.#put({ type: 'gap', from: instrument.name, is, why }, stamp);
      }),
    );
  }

  /** What a take would be made of now. */
  get now(): { window: Window; state: ReadingState; armed: boolean; flowing: boolean } {
    const { armed } = this.#handsFree;
    return { window: this.#window, state: this.#state, armed, flowing: this.#flowing };
  }

  /** Whether it listens. Behind the last event of a session there are no readings. */
  listen(on: boolean): void {
    this.#listens = on;
  }

  /** A take was made: the next one needs a movement first. */
  spend(): void {
    this.#handsFree = spent;
  }

  /** The take that was due could not be kept: it stays due. */
  rearm(): void {
    this.#handsFree = armed;
  }

  stop(): void {
    this.#subscription.unsubscribe();
    this.live$.complete();
    this.due$.complete();
  }

  async #reading({ raw, decoded, stamp }: Reading): Promise<void> {
    if (!this.#listens) return;
    const named = decoded.unit as ReadingUnit | undefined;
    if (named && named !== this.#spoken) {
      this.#spoken = named;
      this.#put({ type: 'unit', from: this.instrument.name, unit: named, acknowledged: false }, stamp);
    }
    const { unit: fixed, unitKnown } = this.#channel;
    const unit = named ?? (unitKnown ? (fixed as ReadingUnit) : this.#spoken);
    const { state } = decoded;
    const value =
      decoded.value === null ? null : converted(this.#channel.quantity, decoded.value, unit, this.#unit);
    const event = await this.#record(
      {
        type: 'reading',
        from: this.instrument.name,
        raw,
        value,
        ...(named && { unit: named }),
        ...(state !== 'ok' && { state }),
      },
      stamp,
    ).catch(() => null);
    // What is not on record is not shown either; the disk speaks up at the next take.
    if (event) this.#arrive({ value, state, seq: event.seq, m: stamp.m });
  }

  /** Readings that were written together are shown together: as many as come, each is looked at once. */
  #arrive(reading: Written): void {
    if (this.#arrived.push(reading) > 1) return;
    if (this.#window.samples.length < crowded) queueMicrotask(() => this.#show());
    else setTimeout(() => this.#show(), crowdedEveryMs);
  }

  #show(): void {
    const arrived = this.#arrived;
    this.#arrived = [];
    const { value, state, m } = arrived.at(-1)!;
    this.#flowing = true;
    this.#state = state;
    let felt = { state: this.#handsFree, due: false };
    const nothing = arrived.findLastIndex((reading) => reading.value === null);
    if (nothing >= 0) {
      this.#window = emptyWindow;
      felt = feel(this.#handsFree, 'moving');
    }
    const samples = arrived.slice(nothing + 1) as Sample[];
    if (samples.length > 0) {
      this.#window = observeAll(this.#window, samples, this.#limits);
      felt = feel(felt.state, this.#window.steadiness);
    }
    this.#handsFree = felt.state;
    const { steadiness, mean, spread, trend, steadySince } = this.#window;
    this.live$.next({
      from: this.instrument.name,
      m,
      value,
      state,
      steadiness,
      mean,
      spread,
      trend,
      spreadLimit: this.#limits.spread,
      steadyForMs: steadySince === null ? 0 : m - steadySince,
      armed: this.#handsFree.armed,
    });
    if (felt.due) this.due$.next();
  }

  #put(event: NewEvent, stamp: Stamp): void {
    if (!this.#listens) return;
    this.#record(event, stamp).catch(() => {});
  }
}

/** Limits of steadiness in the unit in which the session counts readings of this instrument. */
function limitsFor(
  { steady }: Profile,
  channel: Channel,
  { unit, graduation }: InstrumentSetup,
): SteadyLimits {
  const count = (value: number) => converted(channel.quantity, value, channel.unit, unit) / graduation;
  return { ...steady, spread: count(channel.steady.spread), trend: count(channel.steady.trend) };
}
