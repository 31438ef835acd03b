import { notices } from '../../shared/notice/notices.ts';
import type { Session } from '../../shared/session/fold.ts';
import type { Placement } from '../../shared/survey/plan.ts';
import type { SurveyResult } from '../state/survey-result.ts';

/** One sentence about the survey as it stands. */
export interface Notice {
  readonly text: string;
  readonly warns: boolean;
  /** The place to repeat or to look at. */
  readonly place?: Placement;
}

/** A reading that disagrees with the others, and by how much, µm/m for a level and µm for an indicator. */
export interface Suspect extends Placement {
  readonly off: number;
  readonly unit: 'µm/m' | 'µm';
}

/** The reading that disagrees most with the others, when one does. */
export function suspectOf(survey: SurveyResult | null): Suspect | null {
  const found = survey?.result.readings.find(({ suspect }) => suspect);
  if (!found) return null;
  const off = found.residual / Math.max(found.redundancy, 1e-9);
  return 'walk' in found
    ? { run: found.walk, at: [found.from, found.to], off, unit: 'µm/m' }
    : { run: found.sweep, at: [found.at], off, unit: 'µm' };
}

/** Everything that is to be known about what was read so far, the most pressing first. */
export function surveyNotices(session: Session, survey: SurveyResult | null): readonly Notice[] {
  const known = remembered.get(session);
  if (known && known.survey === survey) return known.told;
  const told = notices(session, survey?.result ?? null);
  remembered.set(session, { survey, told });
  return told;
}

const remembered = new WeakMap<Session, { survey: SurveyResult | null; told: readonly Notice[] }>();

/** What stands in the one line under the sentence, and what lies behind it. */
export interface FirstNotice {
  readonly notice: Notice | null;
  readonly more?: readonly Notice[];
}

export const noNotice: FirstNotice = { notice: null };

export function firstOf([notice, ...more]: readonly Notice[]): FirstNotice {
  return notice ? { notice, more } : noNotice;
}
