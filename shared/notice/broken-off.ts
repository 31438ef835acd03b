import type { Session } from '../session/fold.ts';
import type { Result } from '../sheet/result.ts';
import { placementKey, placeWords } from '../survey/plan.ts';
import { amount } from '../words.ts';
import type { Notice } from './notice.ts';
import { countOf, sigmaOf, unitOf } from './reading.ts';

/** Two takes of one place differ by more than this many of their standard deviations: two-sided 0.1 %. */
const differs = 3.29 * Math.SQRT2;

/**
 * After a break the last good placement is to be repeated first; when it is, it tells whether anything moved meanwhile.
 */
export function brokenOff(session: Session, result: Result | null): Notice[] {
  const { resumed, takes } = session;
  if (!resumed) return [];
  const last = takes.findLast(({ event, out }) => event.seq < resumed.seq && (!out || out === 'repeated'));
  if (!last) return [];
  const { place } = last.event;
  const again = takes.find(({ event }) => event.seq > resumed.seq);
  if (!again) {
    const words = session.plan.runs.find(({ id }) => id === place.run)?.words;
    return [
      {
        code: 'broken-off',
        text: `The survey was broken off. Last good was ${placeWords(place)} (${words}); repeat it first: it tells whether anything has moved.`,
        place,
        warns: true,
      },
    ];
  }
  if (placementKey(again.event.place) !== placementKey(place)) return [];
  const run = session.plan.runs.find(({ id }) => id === place.run)!;
  if (session.turnedTakes.has(again.event.seq) !== session.turnedTakes.has(last.event.seq)) return [];
  const off = (again.event.value - last.event.value) * countOf(session.setup);
  const sigma = sigmaOf(session, result);
  if (Math.abs(off) <= differs * sigma) return [];
  return [
    {
      code: 'moved-in-break',
      text: `${placeWords(place)} reads ${amount(off, sigma)} ${unitOf(run)} ${off > 0 ? 'more' : 'less'} than before the break: the part or the zero has moved. Take "${run.words}" again from its start.`,
      place,
      warns: true,
    },
  ];
}
