import { BehaviorSubject } from 'rxjs';
import type { SimulatedState } from '../../shared/messages.ts';
import type { Setup } from '../../shared/session/setup.ts';
import { facingOf, type Placement, stationsOf } from '../../shared/survey/way.ts';
import { MadePort } from '../ports/made-port.ts';
import { stampNow } from '../ports/port.ts';
import { ordinaryLevel, type Shape, SimulatedLevel } from './level.ts';
import { seededRandom } from './random.ts';
import { wornBed } from './scenario.ts';

/** Time between two frames of the simulated level, ms. */
const periodMs = 100;

/** A simulated level on a port, with the hand that moves it. */
export class SimulatedBench {
  readonly port = new MadePort('simulated');
  readonly state$: BehaviorSubject<SimulatedState>;
  readonly #setup: Setup;
  readonly #shape: Shape;
  readonly #level: SimulatedLevel;
  readonly #speaking: NodeJS.Timeout;

  constructor(setup: Setup, seed = 7) {
    this.#setup = setup;
    this.#shape = wornBed(setup.lengthMm);
    this.#level = new SimulatedLevel(this.#shape, ordinaryLevel, seededRandom(seed));
    this.state$ = new BehaviorSubject<SimulatedState>({
      scenario: 'a worn bed',
      walking: false,
      lifted: true,
      standsOn: null,
    });
    this.#speaking = setInterval(() => this.#speak(), periodMs);
  }

  /** True height of each station over the line through the first one and a level, µm. */
  truthUm(): Record<string, number> {
    return Object.fromEntries(stationsOf(this.#setup).map(({ name, xMm }) => [name, this.#shape(xMm)]));
  }

  lift(): void {
    this.#level.lift();
    this.#change({ lifted: true, standsOn: null });
  }

  setDown(place: Placement): void {
    const x = new Map(stationsOf(this.#setup).map(({ name, xMm }) => [name, xMm]));
    const [fromMm, toMm] = [x.get(place.from), x.get(place.to)];
    if (fromMm === undefined || toMm === undefined) return;
    this.#level.setDown(fromMm, toMm, facingOf(this.#setup, place.walk), stampNow().m);
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
