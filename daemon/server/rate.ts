/** How often something may be done: `perS` in the long run, `burst` at once. */
export interface RateLimit {
  readonly perS: number;
  readonly burst: number;
}

/** Counts what each of several doers does, against one limit. Whoever has rested is forgotten. */
export class Rate {
  readonly #limit: RateLimit;
  readonly #now: () => number;
  readonly #spent = new Map<string, { used: number; atMs: number }>();

  constructor(limit: RateLimit, now: () => number = () => performance.now()) {
    this.#limit = limit;
    this.#now = now;
  }

  /** Whether `who` may do it once more now. */
  allows(who: string): boolean {
    const now = this.#now();
    const { perS, burst } = this.#limit;
    const before = this.#spent.get(who);
    const used = Math.max(0, (before?.used ?? 0) - (perS * (now - (before?.atMs ?? now))) / 1000);
    if (used + 1 > burst) return false;
    this.#spent.set(who, { used: used + 1, atMs: now });
    if (this.#spent.size > 1000) this.#forget(now);
    return true;
  }

  #forget(now: number): void {
    const { perS, burst } = this.#limit;
    for (const [who, { atMs }] of this.#spent) {
      if (now - atMs > (1000 * burst) / perS) this.#spent.delete(who);
    }
  }
}
