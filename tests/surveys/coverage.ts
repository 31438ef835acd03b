import { expect } from 'vitest';
import type { Judged } from './true-figures.ts';

/** ±2 standard uncertainties hold a normal error so often. */
const COVERED = 0.9545;
/** A coverage so unlikely under it is a fault. All seeds are fixed: the test never fails by chance. */
const UNLIKELY = 1e-4;

/**
 * Counts how often the truth lies within the stated uncertainty of a number, over surveys that differ in their seed
 * alone, and holds it against 95 %: neither too seldom, nor with uncertainties stated too large.
 */
export class Coverage {
  readonly #tally = new Map<string, { covered: number; squares: number }>();

  count(judged: readonly Judged[]): void {
    for (const { name, value, u, truth } of judged) {
      if (u === 0) continue;
      const off = (value - truth) / u;
      const { covered, squares } = this.#tally.get(name) ?? { covered: 0, squares: 0 };
      this.#tally.set(name, {
        covered: covered + (Math.abs(off) <= 2 ? 1 : 0),
        squares: squares + off * off,
      });
    }
  }

  /** @param runs how many surveys were counted */
  expectSound(runs: number): void {
    expect(this.#tally.size).toBeGreaterThan(0);
    for (const [name, { covered, squares }] of this.#tally) {
      expect(chanceOfAtMost(covered, runs, COVERED), `${name}: ${covered} of ${runs}`).toBeGreaterThan(
        UNLIKELY,
      );
      // Nor are the uncertainties stated too large: the mean square of ±1 errors is 1 ± √(2/runs).
      expect(squares / runs, name).toBeGreaterThan(1 - 4 * Math.sqrt(2 / runs));
    }
  }
}

/** Chance of at most `count` of `runs`, each with the chance `p`: the binomial distribution summed up. */
function chanceOfAtMost(count: number, runs: number, p: number): number {
  let term = (1 - p) ** runs;
  let sum = term;
  for (let k = 1; k <= count; k += 1) {
    term *= ((runs - k + 1) / k) * (p / (1 - p));
    sum += term;
  }
  return sum;
}
