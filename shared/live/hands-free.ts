import type { Steadiness } from '../session/events.ts';

/**
 * Taking without a hand: a take is due once the reading is steady, and the next one only after the
 * instrument was felt to move, so that one station can't be taken twice by accident.
 */
export interface HandsFree {
  readonly armed: boolean;
}

/** Armed from the start: the level is set down for the first time. */
export const armed: HandsFree = { armed: true };
/** After any take, by hand or not, until a movement is felt. */
export const spent: HandsFree = { armed: false };

/** What one more reading does: arms on movement, and says whether a take is due. */
export function feel(state: HandsFree, steadiness: Steadiness): { state: HandsFree; due: boolean } {
  if (steadiness === 'moving') return { state: armed, due: false };
  return { state, due: state.armed && steadiness === 'steady' };
}
