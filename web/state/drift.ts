import { driftOf } from '../../shared/notice/drift.ts';
import { pairedLines } from '../../shared/notice/pairs.ts';
import { linesThatTellDrift } from '../../shared/session/drift-choice.ts';
import type { Session } from '../../shared/session/fold.ts';

const remembered = new WeakMap<Session['counted'], boolean>();

/** Whether a drift shows that could be taken off: one that is sure, steady, and told from a bow. */
export function showsDrift(session: Session): boolean {
  const known = remembered.get(session.counted);
  if (known !== undefined) return known;
  const lines = linesThatTellDrift(session);
  const shows = pairedLines(session, null).some(
    (line) => lines.includes(line.line) && driftOf(session, line)?.steady === true,
  );
  remembered.set(session.counted, shows);
  return shows;
}
