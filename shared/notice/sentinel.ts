import type { Session } from '../session/fold.ts';
import type { Result } from '../sheet/result.ts';
import { placementKey, placementsOf, placeWords } from '../survey/plan.ts';
import { amount } from '../words.ts';
import { lengthOf } from './drift.ts';
import type { Notice } from './notice.ts';
import { countOf, sigmaOf, unitOf } from './reading.ts';

/** So many other takes of the run must lie between, or it was simply repeated. */
const fewestBetween = 3;
const differs = 3.29 * Math.SQRT2;

/** The first place of a run, read again later: what has changed there has changed in all of the run. */
export function sentinel(session: Session, result: Result | null): Notice[] {
  const sigma = sigmaOf(session, result);
  return session.plan.runs.flatMap((run) => {
    const key = placementKey(placementsOf(run)[0]!);
    const takes = session.takes.filter(({ event }) => placementKey(event.place) === key);
    const first = takes.find(({ out }) => out === undefined || out === 'repeated')?.event;
    const again = session.counted.get(key);
    if (!first || !again || first.seq === again.seq) return [];
    if (session.turnedTakes.has(first.seq) !== session.turnedTakes.has(again.seq)) return [];
    const between = session.takes.filter(
      ({ event }) => event.place.run === run.id && event.seq > first.seq && event.seq < again.seq,
    );
    const off = (again.value - first.value) * countOf(session.setup);
    if (between.length < fewestBetween || Math.abs(off) <= differs * sigma) return [];
    const size = `${amount(off, sigma)} ${unitOf(run)}`;
    const fake =
      run.reads === 'tilt'
        ? ` Spread evenly over the walk that would make a false bow of ${((Math.abs(off) * lengthOf(session.plan, run.line)) / 8000).toFixed(1)} µm.`
        : '';
    return [
      {
        code: 'sentinel' as const,
        text: `${placeWords(again.place)}, read again, shows ${size} ${off > 0 ? 'more' : 'less'} than at first: the zero or the part has moved meanwhile.${fake} Let it come to rest and repeat "${run.words}".`,
        place: again.place,
        warns: true,
      },
    ];
  });
}
