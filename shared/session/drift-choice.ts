import type { Session } from './fold.ts';
import { outAndBacks, tellsDrift } from './out-and-back.ts';
import { takenRuns } from './taken-runs.ts';
import { isTurnedIn } from './turned-level.ts';

/** So many readings must be there of the walk out and of the walk back before a drift can be told from anything. */
const fewest = 2;

/**
 * The lines on which a steady drift can be told from a bow, and so be taken off: walked out and back, the level facing
 * alike all the time.
 */
export function linesThatTellDrift(session: Session): string[] {
  const taken = takenRuns(session).filter((one) => !isTurnedIn(one, session));
  return outAndBacks(taken)
    .filter((pair) => tellsDrift(pair) && Math.min(pair.out.takes.length, pair.back.takes.length) >= fewest)
    .map(({ line }) => line);
}
