import { BehaviorSubject } from 'rxjs';
import type { Profile } from '../../protocols/profile.ts';
import { findProfile } from '../../protocols/shipped.ts';
import type { SimulatedState } from '../../shared/messages.ts';
import type { Planted } from '../../shared/session/planted.ts';
import type { Setup } from '../../shared/session/setup.ts';
import type { Placement } from '../../shared/survey/plan.ts';
import { MadePort } from '../ports/made-port.ts';
import { stampNow } from '../ports/port.ts';
import { frameOf } from './frame.ts';
import { ordinaryTraits, Pendulum } from './pendulum.ts';
import { type PlantedHand, plantedHand } from './planted.ts';
import { seededRandom } from './random.ts';
import { demoScene } from './scenario.ts';
import { World } from './world.ts';

/** Time between two frames when the profile names none, ms. */
const usualPeriodMs = 100;

interface BenchOptions {
  /** The mistake that the hand makes. */
  readonly planted?: Planted | undefined;
  /** Where it was set down before. */
  readonly before?: readonly Placement[];
  readonly seed?: number;
  /** How many times faster than usual it comes to rest. */
  readonly pace?: number;
}

/** A simulated instrument on a port, with the hand that moves it. It speaks by the profile of the set-up. */
export class SimulatedBench {
  readonly port = new MadePort('simulated');
  readonly state$: BehaviorSubject<SimulatedState>;
  readonly world: World;
  readonly #setup: Setup;
  readonly #profile: Profile;
  readonly #pendulum: Pendulum;
  readonly #hand: PlantedHand;
  #placed: number;
  readonly #speaking: NodeJS.Timeout;

  constructor(setup: Setup, { planted = 'nothing', before = [], seed = 7, pace = 1 }: BenchOptions = {}) {
    this.#setup = setup;
    this.#profile = findProfile(setup.instrument.profile ?? 'line-decimal');
    this.world = new World(setup, demoScene(setup));
    this.#hand = plantedHand(planted, this.world, seededRandom(seed), before);
    this.#placed = before.length;
    const traits = ordinaryTraits(this.world.plan);
    this.#pendulum = new Pendulum({ ...traits, settleMs: traits.settleMs / pace }, seededRandom(seed));
    this.state$ = new BehaviorSubject<SimulatedState>({
      scenario: this.world.scene.name,
      walking: false,
      lifted: true,
      standsOn: null,
    });
    const { talk } = this.#profile;
    const periodMs = talk.kind === 'periodic' ? talk.everyMs : usualPeriodMs;
    this.#speaking = setInterval(() => this.#speak(), periodMs);
  }

  /** Where the planted mistake is made, or begins; null when it is everywhere or nowhere. */
  get plantedAt(): Placement | null {
    return this.#hand.at;
  }

  lift(): void {
    this.#pendulum.lift();
    this.#change({ lifted: true, standsOn: null });
  }

  setDown(place: Placement): void {
    this.#pendulum.setDown(this.#hand.setDown(place, this.#placed), stampNow().m);
    this.#placed += 1;
    this.#change({ lifted: false, standsOn: place });
  }

  push(): void {
    this.#pendulum.push(stampNow().m);
  }

  walking(on: boolean): void {
    this.#change({ walking: on });
  }

  stop(): void {
    clearInterval(this.#speaking);
    this.state$.complete();
  }

  #speak(): void {
    const stamp = stampNow();
    const bytes = frameOf(this.#profile, this.#setup.instrument, this.#pendulum.read(stamp.m));
    this.port.feed(bytes, stamp);
  }

  #change(part: Partial<SimulatedState>): void {
    this.state$.next({ ...this.state$.value, ...part });
  }
}
