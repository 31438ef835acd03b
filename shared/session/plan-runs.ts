import type { Result } from '../sheet/result.ts';
import type { Session } from './fold.ts';
import { joinedId } from './out-and-back.ts';
import { takenRuns } from './taken-runs.ts';
import { turnedId } from './turned-level.ts';

/**
 * A result whose readings name the runs of the plan again: where a drift is taken off, out and back are one walk of its
 * sheet; where the level was turned in mid-walk, one run is two.
 */
export function withPlanRuns(session: Session, result: Result): Result {
  const planned = new Map(session.plan.runs.map((run) => [run.id, run]));
  if (result.readings.every((reading) => !('walk' in reading) || planned.has(reading.walk))) return result;
  const takes = takenRuns(session)
    .flatMap(({ takes }) => takes)
    .sort((a, b) => a.seq - b.seq);
  const readings = result.readings.map((reading) => {
    if (!('walk' in reading) || planned.has(reading.walk)) return reading;
    const { walk, from, to } = reading;
    const k = takes.findIndex(({ place }) => {
      const run = planned.get(place.run);
      if (!run || place.at[0] !== from || place.at[1] !== to) return false;
      return walk === joinedId(run.line) || walk === turnedId(run.id);
    });
    const [take] = k < 0 ? [] : takes.splice(k, 1);
    return take ? { ...reading, walk: take.place.run } : reading;
  });
  return { ...result, readings };
}
