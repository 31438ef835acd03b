import { type Matched, matchedTo } from '../../shared/live/matched.ts';
import type { Sample } from '../../shared/live/steadiness.ts';
import type { Needle } from './needle.ts';

/** How much of what it said is kept, ms: longer than a take and the wait behind it. */
const keptMs = 60_000;

/**
 * The level that stays put while another one is moved. It is held against the readings of a take at their very times,
 * so a take waits until it has spoken behind the last of them: nothing is extrapolated.
 */
export class Reference {
  readonly needle: Needle;
  #trail: Sample[] = [];
  #waiting: (() => void)[] = [];

  constructor(needle: Needle) {
    this.needle = needle;
    needle.shown$.subscribe({
      next: (sample) => {
        if (sample) this.#keep(sample);
        else this.#trail = [];
        this.#wake();
      },
      complete: () => {
        this.#trail = [];
        this.#wake();
      },
    });
  }

  /** What it read at those times; null when it was lost before it had spoken behind the last of them. */
  async at(times: readonly number[]): Promise<Matched | null> {
    const behind = () => this.#trail.some(({ m }) => m >= times.at(-1)!);
    while (this.#trail.length > 0 && !behind()) {
      await new Promise<void>((resolve) => this.#waiting.push(resolve));
    }
    return matchedTo(times, this.#trail);
  }

  #keep(sample: Sample): void {
    this.#trail.push(sample);
    // Cut back seldom, so that a reading costs nothing.
    if (sample.m - this.#trail[0]!.m > 2 * keptMs) {
      this.#trail = this.#trail.filter(({ m }) => sample.m - m <= keptMs);
    }
  }

  #wake(): void {
    const waiting = this.#waiting;
    this.#waiting = [];
    for (const resolve of waiting) resolve();
  }
}
