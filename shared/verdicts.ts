import { decimalsFor } from './words.ts';

/** The answer to "is it good enough?". */
export type VerdictWord = 'within' | 'outside' | 'cannot tell';

/** A verdict with the numbers it rests on; `reason` says why it cannot be told, and the cheapest cure. */
export interface Judgement {
  readonly value: number;
  /** Expanded uncertainty, 2·u. */
  readonly U: number;
  readonly verdict: VerdictWord;
  readonly reason?: string;
}

/** Coverage factor, as ISO 14253-1 takes it by default. */
const COVERAGE = 2;
/** More repeats than this nobody walks. */
const MOST_REPEATS = 16;

/**
 * Decision rule of ISO 14253-1 for one upper limit T: within when F + U ≤ T, outside when F − U > T,
 * otherwise it cannot be told. `value`, `u` (one standard deviation) and `limit` are in one unit.
 * A signed value (wind, taper, slope) is judged by its size, with `limit` on either side.
 */
export function judge(value: number, u: number, limit: number, unit = 'µm'): Judgement {
  return byRule(Math.abs(value), value, u, limit, unit);
}

/** A limit on one side only: `value` may not exceed `limit`, and may be as low as it likes. */
export function judgeOneSided(value: number, u: number, limit: number, unit = 'µm'): Judgement {
  return byRule(value, value, u, limit, unit);
}

function byRule(judged: number, value: number, u: number, limit: number, unit: string): Judgement {
  const U = COVERAGE * u;
  if (judged + U <= limit) return { value, U, verdict: 'within' };
  if (judged - U > limit) return { value, U, verdict: 'outside' };
  return { value, U, verdict: 'cannot tell', reason: reasonFor(Math.abs(limit - judged), U, u, unit) };
}

function reasonFor(distance: number, U: number, u: number, unit: string): string {
  const decimals = decimalsFor(u);
  const close = distance.toFixed(decimals);
  const why = `the figure lies ${close} ${unit} from the limit and is sure only to ${U.toFixed(decimals)} ${unit}`;
  return `${why}; ${cureFor(distance, U)}`;
}

/** Repeats average: n times the passes divide U by √n. */
function cureFor(distance: number, U: number): string {
  const repeats = Math.ceil((U / distance) ** 2 - 1e-9);
  if (repeats <= MOST_REPEATS) {
    return `${repeats} times as many passes would make U small enough if the figure stays`;
  }
  return 'repeating will not decide it: take a finer instrument or bring the metal further from the limit';
}
