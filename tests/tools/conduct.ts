import { Instrument } from '../../daemon/instruments/instrument.ts';
import { MadePort } from '../../daemon/ports/made-port.ts';
import { Keeper, type Recorder, type SessionCommand } from '../../daemon/session/keeper.ts';
import { Needle } from '../../daemon/session/needle.ts';
import { Reference } from '../../daemon/session/reference.ts';
import { frameOf } from '../../daemon/simulate/frame.ts';
import { ordinaryTraits, Pendulum, type Traits } from '../../daemon/simulate/pendulum.ts';
import { seededRandom } from '../../daemon/simulate/random.ts';
import { type Scene, World } from '../../daemon/simulate/world.ts';
import { bytesOf } from '../../protocols/bytes.ts';
import type { Profile } from '../../protocols/profile.ts';
import { findProfile } from '../../protocols/shipped.ts';
import { type HandsFree, spent, untouched } from '../../shared/live/hands-free.ts';
import type { SweepBy } from '../../shared/live/sweeping.ts';
import type { Header, NewEvent, SessionEvent, Stamp } from '../../shared/session/events.ts';
import type { Session } from '../../shared/session/fold.ts';
import type { ReadingUnit, Setup } from '../../shared/session/setup.ts';
import { type Placement, placementsOf, placeWords } from '../../shared/survey/plan.ts';

/** Longest that an instrument may take to come to rest before the conductor gives up, ms. */
const patienceMs = 20_000;

/** How long things take in made-up time, ms. */
export interface Pace {
  /** Between two frames of the instrument. */
  readonly everyMs: number;
  /** In the hand, between two placements. */
  readonly inHandMs: number;
  /** On its place after a take. */
  readonly standsMs: number;
}
const ordinaryPace: Pace = { everyMs: 100, inHandMs: 800, standsMs: 300 };
/** As few frames as a take can be made of. */
export const hastyPace: Pace = { everyMs: 180, inHandMs: 180, standsMs: 0 };

/**
 * What the instrument really stands on when it is set down for the nth time, counted from 0, as a perfect instrument
 * would read it, µm/m or µm. The place to plant a slip of the hand, a chip or a warm hand.
 */
export type Hand = (place: Placement, nth: number, world: World) => number;
const sureHand: Hand = (place, _, world) => world.reading(place);

/** A level that stays put on a part that leans as a whole. It speaks as the first of the others of the set-up. */
export interface LeaningPart {
  /** Slope of the whole part along its length, µm/m. */
  readonly lean: (nowMs: number) => number;
  /** What the level that stays put would read on level ground, µm/m. */
  readonly zero: number;
  /** +1 when its plus end points to the far end, −1 when it points to the start. */
  readonly sense: 1 | -1;
  /** Between two of its frames. */
  readonly everyMs: number;
  /** Whether its cable is out. */
  readonly silent?: (nowMs: number) => boolean;
}

export interface MadeUp {
  readonly setup: Setup;
  readonly scene: Scene;
  readonly seed: number;
  readonly traits?: Traits;
  readonly pace?: Pace;
  readonly hand?: Hand;
  readonly leaning?: LeaningPart;
  readonly id?: string;
  /** Wall clock at the beginning, ms since 1970. */
  readonly t?: number;
}

/**
 * Conducts a whole survey in made-up time, as fast as it can be computed: a simulated instrument is lifted, set down
 * and taken hands-free, through the same instrument, decoder, needle and keeper as in the daemon.
 */
export class Conductor {
  readonly header: Header;
  readonly events: SessionEvent[] = [];
  readonly pendulum: Pendulum;
  readonly world: World;
  /** Unit in which the instrument speaks from now on, as if its button had been pressed. */
  spoken: ReadingUnit;
  readonly #profile: Profile;
  readonly #pace: Pace;
  readonly #hand: Hand;
  readonly #t0: number;
  readonly #port = new MadePort('made up');
  readonly #leaning: LeaningPart | null;
  readonly #still = new MadePort('stays put');
  #stillNeedle: Needle | null = null;
  #stillSaidMs = 0;
  #standsOn: Placement | null = null;
  #keeper!: Keeper;
  #instrument!: Instrument;
  #needle!: Needle;
  #nowMs = 0;
  #placed = 0;

  private constructor(madeUp: MadeUp) {
    const { setup, scene, seed, id = 'made-up', t = 0 } = madeUp;
    this.#profile = findProfile(setup.instrument.profile ?? 'line-decimal');
    this.#pace = madeUp.pace ?? ordinaryPace;
    this.#hand = madeUp.hand ?? sureHand;
    this.#leaning = madeUp.leaning ?? null;
    this.world = new World(setup, scene);
    this.spoken = setup.instrument.unit;
    this.#t0 = t;
    this.header = {
      recording: 1,
      id,
      program: 'wayscribe, simulated',
      t,
      setup,
      profile: this.#profile,
      simulated: { scenario: scene.name, truthUm: this.world.truthUm() },
    };
    const traits = madeUp.traits ?? ordinaryTraits(this.world.plan);
    this.pendulum = new Pendulum(traits, seededRandom(seed));
  }

  static async of(madeUp: MadeUp): Promise<Conductor> {
    const conductor = new Conductor(madeUp);
    await conductor.#begin([], untouched);
    return conductor;
  }

  get keeper(): Keeper {
    return this.#keeper;
  }

  get session(): Session {
    return this.keeper.session;
  }

  /** Lets time pass while the instrument goes on speaking. */
  async pass(ms: number): Promise<void> {
    for (const end = this.#nowMs + ms; this.#nowMs < end; ) {
      this.#nowMs += this.#pace.everyMs;
      this.#sayStill();
      const value = this.pendulum.read(this.#nowMs) + this.#leanRead();
      const frame = frameOf(this.#profile, this.header.setup.instrument, value, this.spoken);
      this.#port.feed(frame, this.#stamp());
      await settled();
    }
  }

  /** Lifts the instrument until that is felt, sets it down on `place`, and waits for the take. */
  async place(place: Placement): Promise<void> {
    const before = this.session.takes.length;
    this.pendulum.lift();
    do await this.pass(this.#pace.inHandMs);
    while (!this.#needle.now.moved);
    this.#standsOn = place;
    this.pendulum.setDown(this.#hand(place, this.#placed, this.world), this.#nowMs);
    this.#placed += 1;
    const end = this.#nowMs + patienceMs;
    while (this.session.takes.length === before) {
      if (this.#nowMs > end) throw new Error(`no take came on ${placeWords(place)}`);
      await this.pass(this.#pace.everyMs);
    }
    await this.pass(this.#pace.standsMs);
  }

  /**
   * Slides the tip over the run that is next without a stop, from its next place to its last, from one to the next in
   * `stepMs`, and marks: each place as it passes, or at an even pace the first and the last. `most` of them at most.
   */
  async slide(by: SweepBy, stepMs: number, most = Number.POSITIVE_INFINITY): Promise<void> {
    const { next, plan } = this.session;
    const run = plan.runs.find(({ id }) => id === next!.run)!;
    const all = placementsOf(run);
    const from = all.findIndex(({ at }) => at.join() === next!.at.join());
    const places = all.slice(from, from + most);
    await this.ask({ do: 'sweep', by });
    const carry = async (k: number, share: number) => {
      const [here, there] = [places[k]!, places[k + 1] ?? all[from + k - 1]!];
      const rest = this.world.readingBetween(here, there, places[k + 1] ? share : -share);
      this.pendulum.carry(rest);
      await this.pass(this.#pace.everyMs);
    };
    const steps = Math.round(stepMs / this.#pace.everyMs);
    // It comes on from before the first place and runs on beyond the last.
    const beyond = 5;
    for (let k = -beyond; k <= steps * (places.length - 1) + beyond; k += 1) {
      const at = Math.min(places.length - 1, Math.max(0, Math.floor(k / steps)));
      await carry(at, k / steps - at);
      const isMark = by === 'marks' ? k % steps === 0 : k === 0 || k === steps * (places.length - 1);
      if (k >= 0 && isMark && at < places.length) await this.ask({ do: 'take', by: 'pedal', insist: false });
    }
  }

  /** Sets the instrument down on `place` and takes by hand so soon that it still swings. */
  async hurry(place: Placement, afterMs: number): Promise<void> {
    this.pendulum.lift();
    await this.pass(this.#pace.inHandMs);
    this.pendulum.setDown(this.#hand(place, this.#placed, this.world), this.#nowMs);
    this.#placed += 1;
    await this.pass(afterMs);
    await this.ask({ do: 'take', by: 'key', insist: true });
  }

  /** Goes over everything that is still open in the plan. */
  async walk(): Promise<void> {
    while (this.session.next) await this.place(this.session.next);
  }

  /** The level that stays put is lost, as its instrument tells it when it was silent for too long. */
  loseStill(): void {
    this.#stillNeedle?.instrument.gaps$.next({ is: 'lost', why: 'nothing came', stamp: this.#stamp() });
  }

  /** The instrument that is moved is lost, in the same way. */
  lose(): void {
    this.#instrument.gaps$.next({ is: 'lost', why: 'nothing came', stamp: this.#stamp() });
  }

  /** The daemon stops where it is and is started again: the session is folded anew from what is on record. */
  async interrupt(): Promise<void> {
    await this.#stop();
    await this.#begin(this.events, this.session.takes.length > 0 ? spent : untouched);
    await this.keeper.record({ type: 'resumed', why: 'the daemon was started again' });
  }

  async ask(command: SessionCommand): Promise<void> {
    await this.keeper.obey(command);
  }

  async end(): Promise<void> {
    await this.ask({ do: 'finish' });
    await this.#stop();
  }

  async #begin(events: readonly SessionEvent[], handsFree: HandsFree): Promise<void> {
    const { instrument } = this.header.setup;
    this.#keeper = new Keeper(this.header, events, this.#memory(), () => this.#stamp());
    this.#instrument = new Instrument(instrument.name, this.#profile, this.#port);
    const record = (event: NewEvent, stamp: Stamp) => this.keeper.record(event, stamp);
    this.#needle = new Needle(this.#instrument, instrument, record, handsFree);
    await this.#useStill(record);
    await this.#instrument.start();
    const { frame } = this.#profile;
    if (frame.ends === 'delimiter') this.#port.feed(bytesOf(frame.delimiter), this.#stamp());
  }

  /** The level that stays put, if there is one. */
  async #useStill(record: (event: NewEvent, stamp: Stamp) => Promise<SessionEvent>): Promise<void> {
    const [still] = this.header.setup.others ?? [];
    if (!still) return this.keeper.use(this.#needle);
    const instrument = new Instrument(still.name, findProfile(still.profile!), this.#still);
    this.#stillNeedle = new Needle(instrument, still, record, spent);
    this.keeper.use(this.#needle, [this.#stillNeedle], new Reference(this.#stillNeedle));
    await instrument.start();
    this.#still.feed('\r\n', this.#stamp());
  }

  /** What the level that stays put has said up to now. */
  #sayStill(): void {
    const [still] = this.header.setup.others ?? [];
    if (!still || !this.#leaning) return;
    const { lean, zero, sense, everyMs, silent } = this.#leaning;
    for (; this.#stillSaidMs + everyMs <= this.#nowMs; ) {
      this.#stillSaidMs += everyMs;
      if (silent?.(this.#stillSaidMs)) continue;
      const stamp = { t: this.#t0 + this.#stillSaidMs, m: this.#stillSaidMs };
      const value = zero + sense * lean(this.#stillSaidMs);
      this.#still.feed(frameOf(findProfile(still.profile!), still, value, still.unit), stamp);
    }
  }

  /** What the lean of the part adds to the level where it stands. */
  #leanRead(): number {
    const run = this.world.plan.runs.find(({ id }) => id === this.#standsOn?.run);
    if (!this.#leaning || run?.reads !== 'tilt') return 0;
    const x = (name: string | undefined) =>
      this.world.plan.stations.find((station) => station.name === name)?.xMm ?? 0;
    const [from, to] = this.#standsOn!.at;
    const facing = this.session.turnedRun === run.id ? -run.facing : run.facing;
    return facing * Math.sign(x(to) - x(from)) * this.#leaning.lean(this.#nowMs);
  }

  async #stop(): Promise<void> {
    await this.#instrument.stop();
    await this.#stillNeedle?.instrument.stop();
    await this.keeper.close();
  }

  #stamp(): Stamp {
    return { t: this.#t0 + this.#nowMs, m: this.#nowMs };
  }

  #memory(): Recorder {
    return {
      append: async (event: NewEvent, stamp: Stamp) => {
        const written = { seq: this.events.length + 1, ...stamp, ...event } as SessionEvent;
        this.events.push(written);
        return written;
      },
      close: async () => {},
    };
  }
}

/** When everything that a reading has set off is done: none of it waits for the outside. */
function settled(): Promise<void> {
  return new Promise((resolve) => setImmediate(resolve));
}
