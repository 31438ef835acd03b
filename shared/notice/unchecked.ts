import type { Session } from '../session/fold.ts';
import type { Result } from '../sheet/result.ts';
import { placementKey, placementsOf, placeWords, type Run } from '../survey/plan.ts';
import type { Notice } from './notice.ts';
import { placeOf } from './reading.ts';

/** Below this redundancy a wrong reading does not show. */
const least = 0.05;

/** Readings that no other reading checks: whatever they say is believed. */
export function unchecked(session: Session, result: Result | null): Notice[] {
  if (!result) return [];
  const alone = result.readings.filter(({ redundancy }) => redundancy < least).map(placeOf);
  if (alone.length === 0) return [];
  const cure = willCheck(session) ? ' What is still to be read will.' : ` ${cureFor(session)}`;
  if (alone.length === result.readings.length) {
    return [{ code: 'unchecked', text: `Nothing checks these readings yet.${cure}`, warns: false }];
  }
  const names = alone.slice(0, 4).map(placeWords).join(', ') + (alone.length > 4 ? ' …' : '');
  return [{ code: 'unchecked', text: `Nothing checks ${names}.${cure}`, place: alone[0]!, warns: false }];
}

/** Whether what is still wanted reads these places again, or crosses them. */
function willCheck({ runs, counted }: Session): boolean {
  const isBegun = (run: Run) => placementsOf(run).some((place) => counted.has(placementKey(place)));
  const begun = runs.filter(isBegun);
  return runs.some((run) => {
    if (isBegun(run)) return false;
    if (run.reads === 'tilt') return true;
    return !run.artefact && begun.some(({ line }) => line === run.line);
  });
}

function cureFor({ plan }: Session): string {
  const [run] = plan.runs;
  if (run?.reads === 'tilt') return 'Walk back over them.';
  return 'Sweep once more.';
}
