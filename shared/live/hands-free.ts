import type { Steadiness } from '../session/events.ts';

/**
 * Taking without a hand: a take is due once the reading is steady after the instrument was felt to move, so
 * that one station can't be taken twice by accident, nor one for another.
 */
export interface HandsFree {
  /** Whether a person may take without insisting. */
  readonly armed: boolean;
  /** Whether a movement was felt that the next steady reading answers: only then a take is due without a hand. */
  readonly moved: boolean;
}

/** A movement was felt. */
export const armed: HandsFree = { armed: true, moved: true };
/** From the start: wherever the instrument lies, only a person can say that it lies on its place. */
export const untouched: HandsFree = { armed: true, moved: false };
/** After any take, by hand or not, until a movement is felt. */
export const spent: HandsFree = { armed: false, moved: false };

/** The next place is another one than before: what was felt till now was no movement to it. */
export function elsewhere({ armed }: HandsFree): HandsFree {
  return { armed, moved: false };
}

/** What one more reading does: arms on movement, and says whether a take is due. */
export function feel(state: HandsFree, steadiness: Steadiness): { state: HandsFree; due: boolean } {
  if (steadiness === 'moving') return { state: armed, due: false };
  return { state, due: state.moved && steadiness === 'steady' };
}
