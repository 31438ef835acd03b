import type { Session } from '../session/fold.ts';
import { withPlanRuns } from '../session/plan-runs.ts';
import type { Result } from '../sheet/result.ts';
import { brokenOff } from './broken-off.ts';
import { closure } from './closure.ts';
import { drift, driftOrBow } from './drift.ts';
import { lastDigitOf } from './last-digit.ts';
import { footSpacing, measuredLength } from './lengths.ts';
import { loneJump } from './lone-jump.ts';
import { type Circumstances, type Notice, noticeCodes } from './notice.ts';
import { pairedLines } from './pairs.ts';
import { resolution } from './resolution.ts';
import { scatter } from './scatter.ts';
import { sentinel } from './sentinel.ts';
import { slip } from './slip.ts';
import { streamLost } from './stream-lost.ts';
import { suspect } from './suspect.ts';
import { temperature } from './temperature.ts';
import { turnedAlone } from './turned-alone.ts';
import { unchecked } from './unchecked.ts';
import { unitChanged } from './unit-changed.ts';
import { unsettled } from './unsettled.ts';
import { notTurned, untied } from './untied.ts';

/** What a slip of the hand, or a drift, shows up as where it is not known for what it is. */
const symptoms: ReadonlySet<Notice['code']> = new Set(['suspect', 'scatter']);
const slipSymptoms: ReadonlySet<Notice['code']> = new Set([...symptoms, 'drift', 'closure']);

/**
 * Everything that a survey notices while it can still be repeated, the most urgent first.
 * @param adjusted the result of the same session; null while nothing hangs together yet
 */
export function notices(
  session: Session,
  adjusted: Result | null,
  circumstances: Circumstances = {},
): Notice[] {
  const result = adjusted && withPlanRuns(session, adjusted);
  const lines = pairedLines(session, result);
  const slips = lines.flatMap(slip);
  const drifts = lines.flatMap((line) => drift(session, line));
  const all = [
    ...unitChanged(session),
    ...brokenOff(session, result),
    ...slips,
    ...suspect(session, result),
    ...loneJump(session, result),
    ...untied(session, result),
    ...turnedAlone(session, result),
    ...notTurned(session),
    ...streamLost(session),
    ...closure(session, result),
    ...drifts,
    ...sentinel(session, result),
    ...scatter(session, result),
    ...unsettled(session),
    ...measuredLength(session),
    ...footSpacing(session),
    ...resolution(session, circumstances.resolution ?? lastDigitOf(session)),
    ...temperature(session, circumstances),
    ...lines.flatMap(driftOrBow),
    ...unchecked(session, result),
  ];
  return all
    .filter(({ code }) => slips.length === 0 || !slipSymptoms.has(code))
    .filter(({ code }) => drifts.length === 0 || !symptoms.has(code))
    .sort((a, b) => noticeCodes.indexOf(a.code) - noticeCodes.indexOf(b.code));
}
