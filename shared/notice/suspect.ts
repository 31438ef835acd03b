import type { Session } from '../session/fold.ts';
import type { Result } from '../sheet/result.ts';
import { type Placement, placeWords } from '../survey/plan.ts';
import { amount } from '../words.ts';
import type { Notice } from './notice.ts';
import { type Fitted, placeOf, sigmaOf, unitOf, wipe } from './reading.ts';

/** Readings that check only one another share their |w|, but for rounding. */
const alike = 1e-6;

/** The one reading that disagrees most with the others; and those that may as well be the wrong ones. */
export function suspect(session: Session, result: Result | null): Notice[] {
  const worst = result?.readings.find(({ suspect }) => suspect);
  if (!result || !worst) return [];
  const place = placeOf(worst);
  const run = session.plan.runs.find(({ id }) => id === place.run);
  if (!run) return [];
  const error = -worst.residual / worst.redundancy;
  const off = `${amount(error, sigmaOf(session, result))} ${unitOf(run)}`;
  const others = result.readings.filter((other) => other !== worst && isAlike(other, worst)).map(placeOf);
  const same = others.find(({ at }) => placeWords({ at }) === placeWords(place));
  const text = same
    ? `${placeWords(place)} was read twice, ${off} apart; which one is wrong can't be told. ${wipe(run)}, repeat both.`
    : `${wipe(run)} and repeat ${placeWords(place)} (${run.words}): it reads ${off} ${error > 0 ? 'more' : 'less'} than the others agree with.`;
  const doubt = same ? '' : doubtWords(others);
  return [{ code: 'suspect', text: text + doubt, place, warns: true }];
}

/** Readings of a line that only the crossings check can't be told from each other. */
function doubtWords(others: readonly Placement[]): string {
  if (others.length === 0) return '';
  const names = others.slice(0, 2).map(placeWords).join(' or ');
  return others.length > 2
    ? ` It may as well be ${names}, or ${others.length - 2} more that nothing tells from it: repeat them all.`
    : ` It may as well be ${names}.`;
}

function isAlike({ w }: Fitted, { w: worst }: Fitted): boolean {
  return w !== null && Math.abs(Math.abs(w) - Math.abs(worst!)) <= alike * Math.abs(worst!);
}
