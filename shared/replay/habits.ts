import type { Session } from '../session/fold.ts';
import type { Mark } from './marks.ts';

/** How somebody measured, in numbers. Times in ms. */
export interface Habits {
  readonly takes: number;
  /** Takes that were taken back, for a reason that was seen. */
  readonly takenBack: number;
  /** Takes that were read again. */
  readonly repeats: number;
  readonly skipped: number;
  /** Takes made before the needle had come to rest. */
  readonly unsteady: number;
  /** From rest of the needle to the take; null when nothing was waited for. */
  readonly meanWaitMs: number | null;
  readonly longestWaitMs: number | null;
  /** From the first event to the last, breaks shortened. */
  readonly lengthMs: number;
}

/** How a recording was made, from its session and its time line. */
export function habitsOf(session: Session, marks: readonly Mark[], lengthMs: number): Habits {
  const waits = marks.flatMap((mark) => (mark.is === 'wait' ? [mark.toMs - mark.fromMs] : []));
  const outs = session.takes.flatMap(({ out }) => (out === undefined ? [] : [out]));
  return {
    takes: session.takes.length,
    takenBack: outs.filter((out) => out !== 'repeated').length,
    repeats: outs.filter((out) => out === 'repeated').length,
    skipped: session.skipped.size,
    unsteady: session.takes.filter(
      ({ event: { steadiness } }) => steadiness !== null && steadiness !== 'steady',
    ).length,
    meanWaitMs: waits.length > 0 ? waits.reduce((sum, wait) => sum + wait, 0) / waits.length : null,
    longestWaitMs: waits.length > 0 ? Math.max(...waits) : null,
    lengthMs,
  };
}
