import type { Session } from '../../shared/session/fold.ts';
import type { Result } from '../../shared/sheet/result.ts';
import { type Placement, placementKey } from '../../shared/survey/way.ts';
import { amount } from '../../shared/words.ts';
import type { SurveyResult } from '../state/survey-result.ts';

type WalkReading = Extract<Result['readings'][number], { walk: string }>;

/** One sentence about the survey as it stands. */
export interface Notice {
  readonly text: string;
  readonly warns: boolean;
}

/** The reading that disagrees most with the others, when one does. */
export function suspectOf(survey: SurveyResult | null): (Placement & { residualUmPerM: number }) | null {
  const found = survey?.result.readings.find(
    (reading): reading is WalkReading => 'walk' in reading && reading.suspect,
  );
  if (!found) return null;
  return {
    walk: found.walk === 'back' ? 'back' : 'out',
    from: found.from,
    to: found.to,
    residualUmPerM: found.residual / Math.max(found.redundancy, 1e-9),
  };
}

/** Two readings of one step check only each other: which of them is wrong, nobody can tell. */
function readTwice(session: Session, { from, to }: Placement): boolean {
  return (
    session.walks.length > 1 &&
    session.walks.every((walk) => session.counted.has(placementKey({ walk, from, to })))
  );
}

/** The most pressing thing to know about what was read so far. */
export function surveyNotice(session: Session, survey: SurveyResult | null): Notice | null {
  const suspect = suspectOf(survey);
  if (suspect) {
    const off = amount(suspect.residualUmPerM, 1);
    const place = `${suspect.from}–${suspect.to}`;
    const twice = readTwice(session, suspect);
    return {
      text: twice
        ? `${place}: out and back disagree by ${off} µm/m. Wipe the feet and the way, read it again.`
        : `${place} disagrees with the rest by ${off} µm/m. Wipe the feet and the way, read it again.`,
      warns: true,
    };
  }
  if (survey?.cutAt) {
    return {
      text: `Nobody has read ${survey.cutAt}: heights beyond it can't be tied to the rest yet.`,
      warns: true,
    };
  }
  const unsteady = [...session.counted.values()].filter(
    ({ steadiness }) => steadiness !== null && steadiness !== 'steady',
  );
  if (unsteady.length > 0) {
    const names = unsteady.map(({ place }) => `${place.from}–${place.to}`).join(', ');
    return { text: `Taken before it was steady: ${names}.`, warns: false };
  }
  if (survey && survey.result.fit.degreesOfFreedom === 0) {
    return { text: 'Nothing checks these readings yet. The walk back will.', warns: false };
  }
  return null;
}
