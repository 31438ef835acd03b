/** What is odd about a typed number beside those that came before it. */
export interface FarOff {
  /** From the least to the greatest of those before it. */
  readonly range: readonly [least: number, greatest: number];
  /** The slip that would explain it, and the number that would then have been meant; null when none does. */
  readonly slip: { readonly of: Slip; readonly meant: number } | null;
}
export type Slip = 'point' | 'unit' | 'sign';

/** Fewer numbers than this say nothing of the next one. */
const fewest = 3;
/** Asked back when it lies so many times as far from their middle as they do themselves and a slip explains it, … */
const farWithSlip = 8;
/** … or so many times when none does: wear and steps go far, too. */
const far = 30;
/** What was meant lies so near to the others, in the same measure. */
const near = 2;

const slips: readonly (readonly [Slip, factor: number])[] = [
  ['sign', -1],
  ['point', 0.1],
  ['point', 10],
  ['point', 0.01],
  ['point', 100],
  ['point', 0.001],
  ['point', 1000],
  ['unit', 25.4],
  ['unit', 1 / 25.4],
];

/**
 * Whether a number lies so far from those read before it that it is more likely a slip of the hand than metal; null when
 * it may well be true. All are in one unit.
 * @param smallest the smallest difference that means anything: several times the last digit or the spread
 */
export function farOff(value: number, before: readonly number[], smallest: number): FarOff | null {
  if (before.length < fewest) return null;
  const range = [Math.min(...before), Math.max(...before)] as const;
  const middle = (range[0] + range[1]) / 2;
  const reach = Math.max((range[1] - range[0]) / 2, smallest);
  const off = (one: number) => Math.abs(one - middle) / reach;
  if (off(value) <= farWithSlip) return null;
  const slip = slips.find(([, factor]) => off(value * factor) <= near);
  if (slip) return { range, slip: { of: slip[0], meant: value * slip[1] } };
  return off(value) > far ? { range, slip: null } : null;
}
