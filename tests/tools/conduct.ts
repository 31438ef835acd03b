import { Instrument } from '../../daemon/instruments/instrument.ts';
import { MadePort } from '../../daemon/ports/made-port.ts';
import { Keeper, type Recorder, type SessionCommand } from '../../daemon/session/keeper.ts';
import { Needle } from '../../daemon/session/needle.ts';
import { ordinaryLevel, Pendulum, type Traits } from '../../daemon/simulate/pendulum.ts';
import { seededRandom } from '../../daemon/simulate/random.ts';
import { type Scene, World } from '../../daemon/simulate/world.ts';
import { findProfile } from '../../protocols/shipped.ts';
import { armed } from '../../shared/live/hands-free.ts';
import type { Header, NewEvent, SessionEvent, Stamp } from '../../shared/session/events.ts';
import type { Session } from '../../shared/session/fold.ts';
import type { Setup } from '../../shared/session/setup.ts';
import { type Placement, placeWords } from '../../shared/survey/plan.ts';

const everyMs = 100;
/** Longest that a level may take to come to rest before the conductor gives up, ms. */
const patienceMs = 20_000;

export interface MadeUp {
  readonly setup: Setup;
  readonly scene: Scene;
  readonly seed: number;
  readonly traits?: Traits;
  readonly id?: string;
  /** Wall clock at the beginning, ms since 1970. */
  readonly t?: number;
}

/**
 * Conducts a whole survey in made-up time, as fast as it can be computed: a simulated level is lifted, set down and
 * taken hands-free, through the same instrument, decoder, needle and keeper as in the daemon.
 */
export class Conductor {
  readonly header: Header;
  readonly events: SessionEvent[] = [];
  readonly keeper: Keeper;
  readonly level: Pendulum;
  readonly world: World;
  readonly #t0: number;
  readonly #port = new MadePort('made up');
  readonly #instrument: Instrument;
  #nowMs = 0;

  private constructor({ setup, scene, seed, traits = ordinaryLevel, id = 'made-up', t = 0 }: MadeUp) {
    const profile = findProfile(setup.instrument.profile ?? 'line-decimal');
    this.world = new World(setup, scene);
    this.#t0 = t;
    this.header = {
      recording: 1,
      id,
      program: 'wayscribe, simulated',
      t,
      setup,
      profile,
      simulated: { scenario: scene.name, truthUm: this.world.truthUm() },
    };
    this.level = new Pendulum(traits, seededRandom(seed));
    this.keeper = new Keeper(this.header, [], this.#memory(), () => this.#stamp());
    this.#instrument = new Instrument(setup.instrument.name, profile, this.#port);
    this.keeper.use(
      new Needle(
        this.#instrument,
        setup.instrument,
        (event, stamp) => this.keeper.record(event, stamp),
        armed,
      ),
    );
  }

  static async of(madeUp: MadeUp): Promise<Conductor> {
    const conductor = new Conductor(madeUp);
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
    this.level.lift();
    await this.pass(800);
    this.level.setDown(this.world.reading(place), this.#nowMs);
    const end = this.#nowMs + patienceMs;
    while (this.session.takes.length === before) {
      if (this.#nowMs > end) throw new Error(`no take came on ${placeWords(place)}`);
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
