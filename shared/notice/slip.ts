import { placeWords } from '../survey/plan.ts';
import type { Notice } from './notice.ts';
import type { Pair, PairedLine } from './pairs.ts';
import { unitOf } from './reading.ts';

/** A slip of the hand that would explain why out and back disagree. */
type Kind = 'turned' | 'doubled' | 'skipped' | 'jumped';
interface Slip {
  readonly kind: Kind;
  readonly walk: 'out' | 'back';
  /**
   * First pair, in the order of the way out, that it touches or, on the way back, does not touch any more; null when all
   * pairs so far are touched, and it can't be told where it happened.
   */
  readonly from: number | null;
  /** Mean square that is left when it is taken for true. */
  readonly leaves: number;
}

/** So many places must have been read both ways. */
const fewestPairs = 6;
/** A slip must touch, and leave, at least so many places. */
const fewestSide = 2;
/** A slip must leave so many times less than any plainer reason does. */
const plainer = 8;

/**
 * The slips that repeated readings can give away: the level was turned in mid-walk, one station was read twice over or
 * passed over so that everything beyond stands one step off, the zero or the part moved at one place. Each of them is tried at each place; one is told when it
 * makes the two walks agree many times better than a steady drift or one wrong reading would.
 */
export function slip({ line, out, back, pairs }: PairedLine): Notice[] {
  const found = pairs.length < fewestPairs ? null : bestSlip(pairs, out.reads === 'tilt');
  if (!found) return [];
  const { kind, walk, from } = found;
  if (from === null) {
    const what =
      kind === 'turned'
        ? 'go contrary ways: the level was turned end for end between them or in mid-walk'
        : 'stand one step apart: in one of them a station was read twice or passed over';
    const text = `${line}: out and back ${what}. Finish the walk back, and it will show where.`;
    return [{ code: 'slip', text, place: pairs[0]!.back, warns: true }];
  }
  const run = walk === 'out' ? out : back;
  const place = (walk === 'out' ? pairs[from]! : pairs[from - 1]!)[walk];
  const where = placeWords(place);
  const texts: Record<Kind, string> = {
    turned: `From ${where} on, out and back go contrary ways: the level was turned end for end in mid-walk. Turn it back and repeat "${run.words}" from there.`,
    doubled: `From ${where} on, "${run.words}" stands one step behind the other walk: a station was read twice. Repeat it from there.`,
    jumped: `From ${where} on, out and back differ by ${jumpOf(pairs, from)} ${unitOf(out)} more than before it: in one of the two walks the zero or the part has moved there, or the unit was switched. Repeat that walk.`,
    skipped: `From ${where} on, "${run.words}" stands one step ahead of the other walk: a station was passed over. Repeat it from there.`,
  };
  return [{ code: 'slip', text: texts[kind], place, warns: true }];
}

function bestSlip(pairs: readonly Pair[], canTurn: boolean): Slip | null {
  const kinds: readonly Kind[] = canTurn
    ? ['turned', 'doubled', 'skipped', 'jumped']
    : ['doubled', 'skipped', 'jumped'];
  const slips = kinds.flatMap((kind): Slip[] => {
    const whole: Slip = { kind, walk: 'out', from: null, leaves: leavesOf(pairs, kind, 'out', 0) };
    const parts = pairs.flatMap((_, from): Slip[] => {
      if (from < fewestSide || from > pairs.length - fewestSide) return [];
      return (['out', 'back'] as const).map((walk) => {
        return { kind, walk, from, leaves: leavesOf(pairs, kind, walk, from) };
      });
    });
    // A jump of all of them is only another zero.
    return kind === 'jumped' ? parts : [whole, ...parts];
  });
  const best = slips.reduce((a, b) => (b.leaves < a.leaves ? b : a));
  if (best.leaves * plainer >= plainLeaves(pairs)) return null;
  // Where two slips explain it about as well, it can't be told yet where it happened.
  const whole = slips.find(
    ({ kind, from, leaves }) => from === null && kind === best.kind && leaves < plainer * best.leaves,
  );
  return whole ?? best;
}

function leavesOf(pairs: readonly Pair[], kind: Kind, walk: 'out' | 'back', from: number): number {
  switch (kind) {
    case 'turned':
      return turnedLeaves(pairs, walk, from);
    case 'jumped':
      return jumpedLeaves(pairs, from);
    default:
      return shiftedLeaves(pairs, walk, from, kind);
  }
}

/**
 * What is left when the readings of one side go the other way. Out: from `from` on; back: before it. They must do so by
 * themselves, or any change of them at one place would pass for it.
 */
function turnedLeaves(pairs: readonly Pair[], walk: 'out' | 'back', from: number): number {
  const isTurned = (k: number) => (walk === 'out' ? k >= from : k < from);
  const turned = pairs.filter((_, k) => isTurned(k));
  const contrary = squares(turned.map(({ outValue, backValue }) => outValue + backValue));
  if (contrary * plainer >= squares(turned.map(difference))) return Number.POSITIVE_INFINITY;
  const straight = pairs.filter((_, k) => !isTurned(k));
  return (contrary + squares(straight.map(difference))) / Math.max(1, pairs.length - 3);
}

/** What is left when the difference of out and back has one value before `from` and another from there on. */
function jumpedLeaves(pairs: readonly Pair[], from: number): number {
  const differences = pairs.map(difference);
  const left = squares(differences.slice(0, from)) + squares(differences.slice(from));
  return left / Math.max(1, pairs.length - 3);
}

function jumpOf(pairs: readonly Pair[], from: number): string {
  const differences = pairs.map(difference);
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  return Math.abs(mean(differences.slice(from)) - mean(differences.slice(0, from))).toPrecision(2);
}

function difference({ outValue, backValue }: Pair): number {
  return outValue - backValue;
}

/**
 * What is left when one side stands one step off: behind (doubled) or ahead (skipped), in the direction of its walk.
 */
function shiftedLeaves(
  pairs: readonly Pair[],
  walk: 'out' | 'back',
  from: number,
  kind: 'doubled' | 'skipped',
): number {
  const step = (kind === 'doubled' ? -1 : 1) * (walk === 'out' ? 1 : -1);
  const differences = pairs.flatMap(({ outValue, backValue }, k) => {
    const isOff = walk === 'out' ? k >= from : k < from;
    const truly = pairs[isOff ? k + step : k];
    if (!truly) return [];
    return walk === 'out' ? outValue - truly.backValue : truly.outValue - backValue;
  });
  return squares(differences) / Math.max(1, differences.length - 2);
}

/** What is left when nothing, a steady drift, or one wrong reading is the reason: the least of the three. */
function plainLeaves(pairs: readonly Pair[]): number {
  const differences = pairs.map(difference);
  const n = differences.length;
  const without = differences.map((_, k) => squares(differences.filter((_, other) => other !== k)));
  return Math.min(
    squares(differences) / (n - 1),
    squares(withoutTrend(differences)) / (n - 2),
    Math.min(...without) / (n - 2),
  );
}

/** Sum of squares about the mean. */
function squares(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
  return values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
}

function withoutTrend(values: readonly number[]): number[] {
  const middle = (values.length - 1) / 2;
  const products = values.reduce((sum, value, k) => sum + (k - middle) * value, 0);
  const spans = values.reduce((sum, _, k) => sum + (k - middle) ** 2, 0);
  return values.map((value, k) => value - (products / spans) * (k - middle));
}
