import type { Subscription } from 'rxjs';
import type { Keeper } from '../session/keeper.ts';
import type { SimulatedBench } from './bench.ts';

/** How long the walker holds the instrument in the hand, and lets it stand after a take, ms. */
const inHandMs = 700;
const standsMs = 350;
/** In the hand so long at any pace: a few frames must come, or the movement is not felt. */
const leastInHandMs = 300;

/**
 * Carries the simulated instrument over the whole plan as a person would: lift, set down on the next placement,
 * wait for the take, go on.
 */
export class Walker {
  readonly #keeper: Keeper;
  readonly #bench: SimulatedBench;
  readonly #pace: number;
  #subscription: Subscription | null = null;
  #timer: NodeJS.Timeout | null = null;

  /** @param pace how many times faster than a person it moves */
  constructor(keeper: Keeper, bench: SimulatedBench, pace = 1) {
    this.#keeper = keeper;
    this.#bench = bench;
    this.#pace = pace;
  }

  start(): void {
    if (this.#subscription) return;
    this.#bench.walking(true);
    this.#subscription = this.#keeper.events$.subscribe((event) => {
      if (event.type === 'take' || event.type === 'void' || event.type === 'aim')
        this.#after(standsMs / this.#pace);
    });
    this.#after(0);
  }

  stop(): void {
    this.#subscription?.unsubscribe();
    this.#subscription = null;
    if (this.#timer) clearTimeout(this.#timer);
    this.#timer = null;
    this.#bench.walking(false);
  }

  #after(delayMs: number): void {
    if (this.#timer) clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.#move().catch(() => this.stop()), delayMs);
  }

  async #move(): Promise<void> {
    if (!this.#keeper.session.handsFree) await this.#keeper.obey({ do: 'hands-free', on: true });
    if (!this.#keeper.session.next || this.#keeper.session.ended) {
      this.stop();
      return;
    }
    this.#bench.lift();
    this.#timer = setTimeout(
      () => {
        const { next } = this.#keeper.session;
        if (next) this.#bench.setDown(next);
      },
      Math.max(leastInHandMs, inHandMs / this.#pace),
    );
  }
}
