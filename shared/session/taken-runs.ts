import { placementKey, placementsOf, type Run, type TiltRun } from '../survey/plan.ts';
import type { TakeEvent } from './events.ts';
import type { Session } from './fold.ts';

/** A run with what counts of it, in the order in which it was taken. */
export interface TakenRun {
  readonly run: Run;
  readonly takes: readonly TakeEvent[];
}

/** What counts of a walk of a level. */
export interface TakenTilt extends TakenRun {
  readonly run: TiltRun;
}

export function isTiltRun(one: TakenRun): one is TakenTilt {
  return one.run.reads === 'tilt';
}

/** Every run of the plan of which something counts, in the order of the plan. */
export function takenRuns(session: Session): TakenRun[] {
  return session.plan.runs
    .map((run) => ({
      run,
      takes: placementsOf(run)
        .flatMap((place) => session.counted.get(placementKey(place)) ?? [])
        .sort((a, b) => a.seq - b.seq),
    }))
    .filter(({ takes }) => takes.length > 0);
}

/** The same without the run that was begun last. */
export function withoutNewest(taken: readonly TakenRun[]): TakenRun[] {
  const begun = Math.max(...taken.map(({ takes }) => takes[0]!.seq));
  return taken.filter(({ takes }) => takes[0]!.seq !== begun);
}
