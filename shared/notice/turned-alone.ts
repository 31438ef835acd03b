import type { Session } from '../session/fold.ts';
import { isTiltRun, type TakenTilt } from '../session/taken-run.ts';
import { takenRuns } from '../session/taken-runs.ts';
import type { Result } from '../sheet/result.ts';
import { placeWords } from '../survey/plan.ts';
import type { Notice } from './notice.ts';

/**
 * A level that was turned in the middle of a walk, and no place was read with it facing either way: by that walk alone
 * its zero can't be told from a kink of the metal where it was turned.
 */
export function turnedAlone(session: Session, result: Result | null): Notice[] {
  return takenRuns(session)
    .filter(isTiltRun)
    .flatMap((one) => {
      const place = lastOtherwise(session, one);
      if (!place || readingsIn(result, one) === one.takes.length) return [];
      const text = `"${one.run.words}": the level was turned in mid-walk and no place was read both ways, so its zero can't be told from a kink there. Read ${placeWords(place)} once more as the level faces now, or walk back.`;
      return [{ code: 'turned-alone', text, place, warns: true }] as const;
    });
}

/** The place read last with the level facing otherwise than now; null when all were read as it faces now. */
function lastOtherwise({ turnedRun, turnedTakes }: Session, { run, takes }: TakenTilt) {
  const now = turnedRun === run.id;
  const facings = new Set(takes.map(({ seq }) => turnedTakes.has(seq)));
  if (facings.size < 2) return null;
  return takes.findLast(({ seq }) => turnedTakes.has(seq) !== now)!.place;
}

function readingsIn(result: Result | null, { run }: TakenTilt): number {
  return (result?.readings ?? []).filter((one) => 'walk' in one && one.walk === run.id).length;
}
