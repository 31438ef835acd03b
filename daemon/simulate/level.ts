import type { Random } from './random.ts';

/** True height of a way along its length: mm from the start end → µm. */
export type Shape = (xMm: number) => number;

export interface LevelTraits {
  /** What the level reads on a true horizontal, µm/m. */
  readonly zeroUmPerM: number;
  /** Standard deviation of one reading, µm/m. */
  readonly noiseUmPerM: number;
  /** How fast the zero wanders, µm/m an hour. */
  readonly driftUmPerMPerHour: number;
  /** Time constant with which the pendulum comes to rest, ms. */
  readonly settleMs: number;
}

export const ordinaryLevel: LevelTraits = {
  zeroUmPerM: 38,
  noiseUmPerM: 0.35,
  driftUmPerMPerHour: 4,
  settleMs: 420,
};

/**
 * A level that rings, creeps, drifts and makes noise like a real one, standing on a way of known shape.
 * Readings in µm/m; positive when the foot that the plus end points to is the higher one.
 */
export class SimulatedLevel {
  readonly #shape: Shape;
  readonly #traits: LevelTraits;
  readonly #random: Random;
  #stand: { fromMm: number; toMm: number; facing: 1 | -1 } | null = null;
  #ring = { atMs: 0, swing: 0 };
  #wander = 0;

  constructor(shape: Shape, traits: LevelTraits, random: Random) {
    this.#shape = shape;
    this.#traits = traits;
    this.#random = random;
  }

  get lifted(): boolean {
    return this.#stand === null;
  }

  lift(): void {
    this.#stand = null;
  }

  /** Feet on `fromMm` and `toMm`; it rings until it has come to rest. */
  setDown(fromMm: number, toMm: number, facing: 1 | -1, nowMs: number): void {
    this.#stand = { fromMm, toMm, facing };
    this.#ring = { atMs: nowMs, swing: 90 + 60 * this.#random.even() };
  }

  /** A bump: it rings again but stays where it is. */
  push(nowMs: number): void {
    this.#ring = { atMs: nowMs, swing: 70 };
  }

  /** What it reads at `nowMs`, µm/m. */
  read(nowMs: number): number {
    const { zeroUmPerM, noiseUmPerM, driftUmPerMPerHour, settleMs } = this.#traits;
    const drift = (driftUmPerMPerHour * nowMs) / 3_600_000;
    if (!this.#stand) {
      // In the hand it swings over hundreds of µm/m.
      this.#wander = 0.7 * this.#wander + 180 * this.#random.normal();
      return zeroUmPerM + this.#wander;
    }
    const { fromMm, toMm, facing } = this.#stand;
    const riseUm = this.#shape(toMm) - this.#shape(fromMm);
    const slope = (1000 * riseUm) / (toMm - fromMm);
    const since = nowMs - this.#ring.atMs;
    const ringing = this.#ring.swing * Math.exp(-since / settleMs) * Math.cos(since / 180);
    return facing * slope + zeroUmPerM + drift + ringing + noiseUmPerM * this.#random.normal();
  }
}
