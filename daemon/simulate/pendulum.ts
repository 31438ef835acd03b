import type { Plan } from '../../shared/survey/plan.ts';
import type { Random } from './random.ts';

/** How an instrument behaves, in the unit in which it reads: µm/m for a level, µm for an indicator. */
export interface Traits {
  /** What it reads on nothing: zero error of a level, set-up of an indicator. */
  readonly zero: number;
  /** Standard deviation of one reading. */
  readonly noise: number;
  /** How fast the zero wanders, an hour. */
  readonly driftPerHour: number;
  /** Time constant with which it comes to rest, ms. */
  readonly settleMs: number;
  /** How far it swings in the hand and just after it is set down. */
  readonly swing: number;
}

export const ordinaryLevel: Traits = { zero: 38, noise: 0.35, driftPerHour: 4, settleMs: 420, swing: 120 };
export const ordinaryIndicator: Traits = {
  zero: 21,
  noise: 0.12,
  driftPerHour: 0.5,
  settleMs: 160,
  swing: 40,
};
/** A micrometer or caliper over pins: what it reads is the size itself. */
const ordinaryMicrometer: Traits = { ...ordinaryIndicator, zero: 0, noise: 0.2, driftPerHour: 0 };

/** The instrument that a plan is done with. */
export function ordinaryTraits({ runs }: Plan): Traits {
  const [run] = runs;
  if (run?.reads !== 'height') return ordinaryLevel;
  return run.offset === 'known' ? ordinaryMicrometer : ordinaryIndicator;
}

/** An instrument that rings, creeps, drifts and makes noise like a real one. */
export class Pendulum {
  readonly #traits: Traits;
  readonly #random: Random;
  /** What it would read where it stands, without its zero; null in the hand. */
  #rest: number | null = null;
  #ring = { atMs: 0, swing: 0 };
  #wander = 0;

  constructor(traits: Traits, random: Random) {
    this.#traits = traits;
    this.#random = random;
  }

  get lifted(): boolean {
    return this.#rest === null;
  }

  lift(): void {
    this.#rest = null;
  }

  /** Stands where a perfect instrument would read `rest`; it rings until it has come to rest. */
  setDown(rest: number, nowMs: number): void {
    this.#rest = rest;
    this.#ring = { atMs: nowMs, swing: this.#traits.swing * (0.75 + 0.5 * this.#random.even()) };
  }

  /** Slides on to where a perfect instrument would read `rest`, without a jolt. */
  carry(rest: number): void {
    this.#rest = rest;
  }

  /** A bump: it rings again but stays where it is. */
  push(nowMs: number): void {
    this.#ring = { atMs: nowMs, swing: 0.6 * this.#traits.swing };
  }

  /** What it reads at `nowMs`. */
  read(nowMs: number): number {
    const { zero, noise, driftPerHour, settleMs, swing } = this.#traits;
    if (this.#rest === null) {
      // In the hand it swings far.
      this.#wander = 0.7 * this.#wander + 1.5 * swing * this.#random.normal();
      return zero + this.#wander;
    }
    const since = nowMs - this.#ring.atMs;
    const ringing = this.#ring.swing * Math.exp(-since / settleMs) * Math.cos(since / (0.43 * settleMs));
    return this.#rest + zero + (driftPerHour * nowMs) / 3_600_000 + ringing + noise * this.#random.normal();
  }
}
