import { differenceOf, type Measured } from './before-after.ts';

/** How far a figure is from its limit, round by round. */
export interface Convergence {
  /** Rounds still to come if each brings as much as the last; null when that cannot be told. */
  readonly roundsLeft: number | null;
  /** Fewest and most of them, as far as the last gain is sure. `most` is null when it has no end. */
  readonly range: { readonly fewest: number; readonly most: number | null } | null;
  /** The same in words. */
  readonly words: string;
}

const COVERAGE = 2;

/**
 * Rounds that are left until the figure is surely within its limit (figure + U ≤ limit), at the gain of the last
 * round. All in one unit; `rounds` from as found to the newest.
 */
export function convergenceOf(rounds: readonly Measured[], limit: number): Convergence {
  const newest = rounds.at(-1);
  const before = rounds.at(-2);
  if (!newest) return untold('Nothing was measured yet.');
  const rest = Math.abs(newest.value) + COVERAGE * newest.u - limit;
  if (rest <= 0) {
    return { roundsLeft: 0, range: { fewest: 0, most: 0 }, words: 'It is within its limit.' };
  }
  if (!before) return untold('One round says nothing of the rate.');
  const { value, u, same } = differenceOf(abs(before), abs(newest));
  const gain = -value;
  if (same) return untold('The last round changed nothing that can be told from the doubt.');
  if (gain < 0) return untold('The last round made it worse.');
  const fewest = Math.ceil(rest / (gain + COVERAGE * u));
  const roundsLeft = Math.ceil(rest / gain);
  const surely = gain - COVERAGE * u;
  const most = surely > 0 ? Math.ceil(rest / surely) : null;
  return {
    roundsLeft,
    range: { fewest, most },
    words: `${roundsLeft === 1 ? 'About one more round' : `About ${roundsLeft} more rounds`} at this rate.`,
  };
}

/** Rounds that a plan foresees when it is measured again after every `passesPerRound` passes. */
export function roundsForeseen(passes: number, passesPerRound: number): number {
  return Math.ceil(passes / passesPerRound);
}

function abs({ value, u }: Measured): Measured {
  return { value: Math.abs(value), u };
}

function untold(words: string): Convergence {
  return { roundsLeft: null, range: null, words };
}
