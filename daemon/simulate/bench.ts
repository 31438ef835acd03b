import { BehaviorSubject } from 'rxjs';
import type { SimulatedState } from '../../shared/messages.ts';
import type { Setup } from '../../shared/session/setup.ts';
import type { Placement } from '../../shared/survey/plan.ts';
import { MadePort } from '../ports/made-port.ts';
import { stampNow } from '../ports/port.ts';
import { ordinaryLevel, Pendulum } from './pendulum.ts';
import { seededRandom } from './random.ts';
import { demoScene } from './scenario.ts';
import { World } from './world.ts';

/** Time between two frames of the simulated level, ms. */
const periodMs = 100;

/** A simulated level on a port, with the hand that moves it. */
export class SimulatedBench {
  readonly port = new MadePort('simulated');
  readonly state$: BehaviorSubject<SimulatedState>;
  readonly world: World;
  readonly #level: Pendulum;
  readonly #speaking: NodeJS.Timeout;

  constructor(setup: Setup, seed = 7) {
    this.world = new World(setup, demoScene(setup));
    this.#level = new Pendulum(ordinaryLevel, seededRandom(seed));
    this.state$ = new BehaviorSubject<SimulatedState>({
      scenario: this.world.scene.name,
      walking: false,
      lifted: true,
      standsOn: null,
    });
    this.#speaking = setInterval(() => this.#speak(), periodMs);
  }

  lift(): void {
    this.#level.lift();
    this.#change({ lifted: true, standsOn: null });
  }

  setDown(place: Placement): void {
    this.#level.setDown(this.world.reading(place), stampNow().m);
    this.#change({ lifted: false, standsOn: place });
  }

  push(): void {
    this.#level.push(stampNow().m);
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
    const value = this.#level.read(stamp.m);
    const size = Math.abs(value).toFixed(1).padStart(6, '0');
    this.port.feed(`${value < 0 ? '-' : '+'}${size}\r\n`, stamp);
  }

  #change(part: Partial<SimulatedState>): void {
    this.state$.next({ ...this.state$.value, ...part });
  }
}
