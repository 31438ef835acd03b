import { placementKey, placementsOf } from '../survey/plan.ts';
import type { Session } from './fold.ts';
import { referenced } from './referenced.ts';
import type { TakenRun } from './taken-run.ts';

/**
 * Every run that is wanted of which something counts, in the order of the plan: one that was given up counts nothing.
 * What the reference level tells is taken off the readings.
 */
export function takenRuns(session: Session): TakenRun[] {
  return referenced(session, countedRuns(session));
}

function countedRuns(session: Session): TakenRun[] {
  return session.runs
    .map((run) => ({
      run,
      takes: placementsOf(run)
        .flatMap((place) => {
          const key = placementKey(place);
          return [session.counted.get(key) ?? [], session.bothWays.get(key) ?? []].flat();
        })
        .sort((a, b) => a.seq - b.seq),
    }))
    .filter(({ takes }) => takes.length > 0);
}

/** The same without the run that was begun last. */
export function withoutNewest(taken: readonly TakenRun[]): TakenRun[] {
  const begun = Math.max(...taken.map(({ takes }) => takes[0]!.seq));
  return taken.filter(({ takes }) => takes[0]!.seq !== begun);
}
