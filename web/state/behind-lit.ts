import type { ReferenceKind } from '../../shared/figures/reference.ts';
import { type Explained, type ReadingBehind, readingsBehind } from '../../shared/reduce/behind.ts';
import type { Session } from '../../shared/session/fold.ts';
import { planRunNames } from '../../shared/session/plan-runs.ts';
import { toSheet } from '../../shared/session/to-sheet.ts';
import { validateSheet } from '../../shared/sheet/sheet.ts';
import { type Placement, placementKey } from '../../shared/survey/plan.ts';
import { kindWords } from '../words/kinds.ts';
import type { Lit } from './lit.ts';
import { slopeTold } from './over-motion.ts';
import type { SurveyResult } from './survey-result.ts';

/** The readings that make what is shown of a height, by the runs of the plan; none when a reading is lit. */
export function behindLit(
  session: Session,
  survey: SurveyResult,
  lit: Lit,
  reference: ReferenceKind,
): ReadingBehind[] {
  if (lit.is === 'reading') return [];
  const named = planRunNames(session);
  const explained =
    lit.is === 'across' ? lit : { ...lit, over: shownOver(session, survey, lit.line, reference) };
  return readingsBehind(validateSheet(toSheet(session)), explained).map((reading) => ({
    ...reading,
    run: named(reading.run, reading.at),
  }));
}

/** What the heights of a line are shown over while the working lies open. */
function shownOver(
  { setup }: Session,
  { result }: SurveyResult,
  line: string,
  reference: ReferenceKind,
): Extract<Explained, { line: string }>['over'] {
  if (!kindWords[setup.kind].overMotion) return reference;
  return slopeTold(result, line, 1) ? 'motion' : 'leastSquares';
}

/** What each reading counts, by `placementKey`. */
export function weightsOf(behind: readonly ReadingBehind[]): ReadonlyMap<string, number> {
  return new Map(
    behind.map(({ run, at, weight }) => [placementKey({ run, at: [...at] as Placement['at'] }), weight]),
  );
}

/** How strongly each reading is lit, from 0 to 1, by `placementKey`. */
export function strengths(behind: readonly ReadingBehind[]): ReadonlyMap<string, number> {
  const most = Math.max(1e-12, ...behind.map(({ weight }) => Math.abs(weight)));
  return new Map([...weightsOf(behind)].map(([key, weight]) => [key, Math.abs(weight) / most]));
}
