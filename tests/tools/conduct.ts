import { Instrument } from '../../daemon/instruments/instrument.ts';
import { MadePort } from '../../daemon/ports/made-port.ts';
import { Keeper, type Recorder, type SessionCommand } from '../../daemon/session/keeper.ts';
import { Needle } from '../../daemon/session/needle.ts';
import { type LevelTraits, ordinaryLevel, type Shape, SimulatedLevel } from '../../daemon/simulate/level.ts';
import { seededRandom } from '../../daemon/simulate/random.ts';
import { findProfile } from '../../protocols/shipped.ts';
import { armed } from '../../shared/live/hands-free.ts';
import type { Header, NewEvent, SessionEvent, Stamp } from '../../shared/session/events.ts';
import type { Session } from '../../shared/session/fold.ts';
import type { Setup } from '../../shared/session/setup.ts';
import { facingOf, type Placement, stationsOf } from '../../shared/survey/way.ts';

const everyMs = 100;
/** Longest that a level may take to come to rest before the conductor gives up, ms. */
const patienceMs = 20_000;

export interface Scene {
  readonly setup: Setup;
  readonly shape: Shape;
  readonly seed: number;
  readonly traits?: LevelTraits;
  readonly id?: string;
  /** Wall clock at the beginning, ms since 1970. */
  readonly t?: number;
  readonly scenario?: string;
}

/**
 * Conducts a whole survey in made-up time, as fast as it can be computed: a simulated level is lifted, set down and
 * taken hands-free, through the same instrument, decoder, needle and keeper as in the daemon.
 */
export class Conductor {
  readonly header: Header;
  readonly events: SessionEvent[] = [];
  readonly keeper: Keeper;
  readonly level: SimulatedLevel;
  readonly #setup: Setup;
  readonly #t0: number;
  readonly #port = new MadePort('made up');
  readonly #instrument: Instrument;
  #nowMs = 0;

  private constructor(scene: Scene) {
    const { setup, shape, seed, id = 'made-up', t = 0, scenario = 'made up' } = scene;
    const profile = findProfile(setup.level.profile ?? 'line-decimal');
    const truthUm = Object.fromEntries(stationsOf(setup).map(({ name, xMm }) => [name, shape(xMm)]));
    this.#setup = setup;
    this.#t0 = t;
    this.header = {
      recording: 1,
      id,
      program: 'wayscribe, simulated',
      t,
      setup,
      profile,
      simulated: { scenario, truthUm },
    };
    this.level = new SimulatedLevel(shape, scene.traits ?? ordinaryLevel, seededRandom(seed));
    this.keeper = new Keeper(this.header, [], this.#memory(), () => this.#stamp());
    this.#instrument = new Instrument(setup.level.name, profile, this.#port);
    this.keeper.use(
      new Needle(this.#instrument, setup.level, (event, stamp) => this.keeper.record(event, stamp), armed),
    );
  }

  static async of(scene: Scene): Promise<Conductor> {
    const conductor = new Conductor(scene);
    await conductor.#instrument.start();
    conductor.#port.feed('\r\n', conductor.#stamp());
    return conductor;
  }

  get session(): Session {
    return this.keeper.session;
  }

  /** Lets time pass while the level goes on speaking. */
  async pass(ms: number): Promise<void> {
    for (const end = this.#nowMs + ms; this.#nowMs < end; ) {
      this.#nowMs += everyMs;
      const value = this.level.read(this.#nowMs);
      const size = Math.abs(value).toFixed(1).padStart(6, '0');
      this.#port.feed(`${value < 0 ? '-' : '+'}${size}\r\n`, this.#stamp());
      await settled();
    }
  }

  /** Lifts the level, sets it down on `place`, and waits for the take. */
  async place(place: Placement): Promise<void> {
    const before = this.session.takes.length;
    const x = new Map(stationsOf(this.#setup).map(({ name, xMm }) => [name, xMm]));
    this.level.lift();
    await this.pass(800);
    this.level.setDown(x.get(place.from)!, x.get(place.to)!, facingOf(this.#setup, place.walk), this.#nowMs);
    const end = this.#nowMs + patienceMs;
    while (this.session.takes.length === before) {
      if (this.#nowMs > end) throw new Error(`no take came on ${place.from}–${place.to}`);
      await this.pass(everyMs);
    }
    await this.pass(300);
  }

  /** Walks over everything that is still open in the plan. */
  async walk(): Promise<void> {
    while (this.session.next) await this.place(this.session.next);
  }

  async ask(command: SessionCommand): Promise<void> {
    await this.keeper.obey(command);
  }

  async end(): Promise<void> {
    await this.ask({ do: 'finish' });
    await this.#instrument.stop();
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
