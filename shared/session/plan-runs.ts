import type { Result } from '../sheet/result.ts';
import type { Session } from './fold.ts';
import { joinedId } from './out-and-back.ts';
import { takenRuns } from './taken-runs.ts';
import { turnedId } from './turned-level.ts';

/**
 * Names the run of the plan that a reading of the sheet belongs to: where a drift is taken off, out and back are one
 * walk of the sheet; where the level was turned in mid-walk, one run is two. To be asked for every reading once, in the
 * order of the sheet.
 */
export function planRunNames(session: Session): (run: string, at: readonly string[]) => string {
  const planned = new Map(session.plan.runs.map((run) => [run.id, run]));
  const takes = takenRuns(session)
    .flatMap(({ takes }) => takes)
    .sort((a, b) => a.seq - b.seq);
  return (name, [from, to]) => {
    if (planned.has(name)) return name;
    const k = takes.findIndex(({ place }) => {
      const run = planned.get(place.run);
      if (!run || place.at[0] !== from || place.at[1] !== to) return false;
      return name === joinedId(run.line) || name === turnedId(run.id);
    });
    const [take] = k < 0 ? [] : takes.splice(k, 1);
    return take?.place.run ?? name;
  };
}

/** A result whose readings name the runs of the plan again. */
export function withPlanRuns(session: Session, result: Result): Result {
  const named = planRunNames(session);
  const readings = result.readings.map((reading) =>
    'walk' in reading ? { ...reading, walk: named(reading.walk, [reading.from, reading.to]) } : reading,
  );
  return { ...result, readings };
}
