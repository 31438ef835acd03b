import { Subject, type Subscription } from 'rxjs';
import { channelFor } from '../../protocols/channels.ts';
import type { Channel, Profile } from '../../protocols/profile.ts';
import { converted } from '../../protocols/quantities.ts';
import { armed, elsewhere, feel, type HandsFree, spent } from '../../shared/live/hands-free.ts';
import {
  alone,
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

/** What a take would be made of. */
export interface NeedleNow {
  readonly window: Window;
  readonly state: ReadingState;
  /** Whether a person may take without insisting. */
  readonly armed: boolean;
  /** Whether it was felt to move to where it stands. */
  readonly moved: boolean;
  readonly flowing: boolean;
  /** Its own button sent the same frame once more within a moment. */
  readonly bounced: boolean;
}

/** With more samples than this in its window, which no instrument of a shop sends, it is judged only so often, ms. */
const crowded = 2000;
const crowdedEveryMs = 20;

/**
 * A button that sends the same frame again within this time has bounced, or was pressed twice by one hand, ms: nobody
 * lifts an instrument and sets it on the next station that fast (common practice, no source).
 */
const bounceMs = 500;

/** A reading that is on record. */
interface Written {
  readonly raw: string;
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
  /** A steady reading after a felt movement, or whatever the instrument sent by its own button. */
  readonly due$ = new Subject<NeedleNow>();
  /** Every reading once it is on record; null where the stream broke or said no number. */
  readonly shown$ = new Subject<Sample | null>();
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
  /** What a take that can't be kept goes back to. */
  #unspent: HandsFree = spent;
  /** Counts the breaks of the stream: a reading from before one says nothing of now. */
  #breaks = 0;
  /** What its own button sent last. */
  #pressed: Pick<Written, 'raw' | 'm'> | null = null;
  #bounced = false;
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
        this.#breaks += 1;
        this.#arrived = [];
        this.#window = emptyWindow;
        this.shown$.next(null);
        // Nobody knows what became of the instrument meanwhile: it is to be set down anew.
        this.#handsFree = spent;
        this.#unspent = spent;
        this.#put({ type: 'gap', from: instrument.name, is, why }, stamp);
      }),
    );
  }

  /** What a take would be made of now. */
  get now(): NeedleNow {
    const { armed, moved } = this.#handsFree;
    return {
      window: this.#window,
      state: this.#state,
      armed,
      moved,
      flowing: this.#flowing,
      bounced: this.#bounced,
    };
  }

  /** Its readings come one by one, each meant by whoever pressed its button. */
  get byButton(): boolean {
    return this.instrument.profile.talk.kind === 'by-button';
  }

  /** Whether it listens. Behind the last event of a session there are no readings. */
  listen(on: boolean): void {
    this.#listens = on;
  }

  /** A take was made: the next one needs a movement first. */
  spend(): void {
    this.#unspent = this.#handsFree;
    this.#handsFree = spent;
  }

  /** The take could not be kept: all is as before it, unless the stream broke or a movement was felt meanwhile. */
  rearm(): void {
    if (!this.#handsFree.moved) this.#handsFree = this.#unspent;
  }

  /** The next place became another one: without a hand, it is taken only after a movement. */
  lookElsewhere(): void {
    this.#handsFree = elsewhere(this.#handsFree);
    this.#unspent = elsewhere(this.#unspent);
  }

  stop(): void {
    this.#subscription.unsubscribe();
    this.live$.complete();
    this.due$.complete();
    this.shown$.complete();
  }

  async #reading({ raw, decoded, stamp }: Reading): Promise<void> {
    if (!this.#listens) return;
    const named = decoded.unit as ReadingUnit | undefined;
    if (named && named !== this.#spoken) this.#tellUnit(named, stamp);
    const stream = this.#breaks;
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
    if (event && stream === this.#breaks) this.#arrive({ raw, value, state, seq: event.seq, m: stamp.m });
  }

  /** Readings that were written together are shown together; each press of a button is shown by itself. */
  #arrive(reading: Written): void {
    if (this.byButton) {
      const { raw, m } = reading;
      this.#bounced = this.#pressed?.raw === raw && m - this.#pressed.m <= bounceMs;
      this.#pressed = { raw, m };
      this.#show([reading]);
      return;
    }
    if (this.#arrived.push(reading) > 1) return;
    const show = () => {
      const arrived = this.#arrived;
      this.#arrived = [];
      // A break of the stream has let go of what had arrived before it.
      if (arrived.length > 0) this.#show(arrived);
    };
    if (this.#window.samples.length < crowded) queueMicrotask(show);
    else setTimeout(show, crowdedEveryMs);
  }

  #show(arrived: readonly Written[]): void {
    const { value, state, m } = arrived.at(-1)!;
    this.#flowing = true;
    this.#state = state;
    let felt = { state: this.#handsFree, due: false };
    let fresh: Sample[] = [];
    for (const each of arrived) {
      const sample = each.state === 'ok' && each.value !== null ? { ...each, value: each.value } : null;
      this.shown$.next(sample);
      if (sample) {
        fresh.push(sample);
        continue;
      }
      fresh = [];
      this.#window = emptyWindow;
      // A frozen display and a spent battery tell of no movement; beyond its range it is surely not on its place.
      if (each.state === 'over-range') felt = feel(felt.state, 'moving');
    }
    if (this.byButton) {
      // One press, one reading: it waits for nothing, and is not there for a second take.
      this.#window = fresh[0] ? alone(fresh[0]) : emptyWindow;
      felt = { state: armed, due: true };
    } else if (fresh.length > 0) {
      this.#window = observeAll(this.#window, fresh, this.#limits);
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
      moved: this.#handsFree.moved,
      ...(this.#bounced && { bounced: true }),
    });
    if (felt.due) this.due$.next(this.now);
    if (this.byButton) this.#window = emptyWindow;
  }

  /** Puts on record that the instrument speaks in another unit; if that fails, the next reading tries again. */
  #tellUnit(unit: ReadingUnit, stamp: Stamp): void {
    const before = this.#spoken;
    this.#spoken = unit;
    this.#record({ type: 'unit', from: this.instrument.name, unit, acknowledged: false }, stamp).catch(() => {
      if (this.#spoken === unit) this.#spoken = before;
    });
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
