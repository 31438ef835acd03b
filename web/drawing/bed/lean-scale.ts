import { roundStep } from '../heights-axis.ts';

/**
 * How a slope across is drawn as a lean: px between the two ends of a bar for each µm/m, half at each end; the end at the rear
 * way goes to the right for plus, rear HIGH.
 */
export interface LeanScale {
  readonly pxPerUmPerM: number;
  /** A round slope and how far a bar leans for it, to be drawn beside the ladder. */
  readonly keyUmPerM: number;
  readonly keyPx: number;
}

/** A bar leans this part of the way to the next rung at the most. */
const mostOfRung = 0.8;
/** No bar leans further than this, however far apart the rungs are. */
const mostPx = 56;

/**
 * The scale that lets the largest lean reach nearly to the next rung. Never so large that what is only uncertainty
 * fills it: the whole lean is at least eight times the largest standard uncertainty.
 * @param rungPx from one rung to the next
 * @param lastRoomPx free to the right of the last rung
 */
export function leanScale(
  leans: readonly { readonly slopeUmPerM: number; readonly uUmPerM: number }[],
  rungPx: number,
  lastRoomPx: number,
): LeanScale {
  const reach = Math.min(mostPx, mostOfRung * rungPx);
  const steepest = Math.max(
    1,
    ...leans.map(({ slopeUmPerM, uUmPerM }) => Math.max(Math.abs(slopeUmPerM), 8 * uUmPerM)),
  );
  const last = Math.max(leans.at(-1)?.slopeUmPerM ?? 0, 1e-9);
  const pxPerUmPerM = Math.min(reach / steepest, (2 * lastRoomPx) / last);
  const leastKeyPx = 24;
  const keyUmPerM = roundStep(leastKeyPx / pxPerUmPerM);
  return { pxPerUmPerM, keyUmPerM, keyPx: keyUmPerM * pxPerUmPerM };
}
