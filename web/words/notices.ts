import type { Session } from '../../shared/session/fold.ts';
import { type Placement, placementKey } from '../../shared/survey/plan.ts';
import { amount } from '../../shared/words.ts';
import { addableRun } from '../state/on-plan.ts';
import type { SurveyResult } from '../state/survey-result.ts';
import { kindWords } from './kinds.ts';
import { turnedBoth } from './profile.ts';

/** One sentence about the survey as it stands. */
export interface Notice {
  readonly text: string;
  readonly warns: boolean;
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

/** Two readings of one place check only each other: which of them is wrong, nobody can tell. */
function readTwice(session: Session, { at }: Placement): boolean {
  const times = session.runs.filter(({ id }) => session.counted.has(placementKey({ run: id, at }))).length;
  return session.setup.kind === 'way' && times === 2;
}

/** The most pressing thing to know about what was read so far. */
export function surveyNotice(session: Session, survey: SurveyResult | null): Notice | null {
  const suspect = suspectOf(survey);
  if (suspect) {
    const off = `${amount(suspect.off, 1)} ${suspect.unit}`;
    const place = suspect.at.join('–');
    const wipe =
      kindWords[session.setup.kind].reads === 'tilt'
        ? 'Wipe the feet and the way, read it again.'
        : 'Wipe the tip and the metal, read it again.';
    return {
      text: readTwice(session, suspect)
        ? `${place}: out and back disagree by ${off}. ${wipe}`
        : `${place} disagrees with the rest by ${off}. ${wipe}`,
      warns: true,
    };
  }
  if (survey?.cutAt) {
    const where = survey.cutAt.includes('–')
      ? `Nobody has read ${survey.cutAt}`
      : `${survey.cutAt} stands alone`;
    return { text: `${where}: heights beyond it can't be tied to the rest yet.`, warns: true };
  }
  const halfTurned = halfTurnedNotice(session, survey);
  if (halfTurned) return halfTurned;
  const unsteady = [...session.counted.values()].filter(
    ({ steadiness }) => steadiness !== null && steadiness !== 'steady',
  );
  if (unsteady.length > 0) {
    const names = unsteady.map(({ place }) => place.at.join('–')).join(', ');
    return { text: `Taken before it was steady: ${names}.`, warns: false };
  }
  if (survey && survey.result.fit.degreesOfFreedom === 0) {
    return { text: `Nothing checks these readings yet.${willCheck(session)}`, warns: false };
  }
  return null;
}

/** While a thing is swept turned over, only stations that were read in both positions can count. */
function halfTurnedNotice(session: Session, survey: SurveyResult | null): Notice | null {
  if (!turnedBoth(session) || session.ended) return null;
  const read = new Set([...session.counted.values()].flatMap(({ place }) => place.at));
  const waiting = [...read].filter((name) => !survey?.result.stations[name]);
  if (waiting.length === 0) return null;
  const which = waiting.length === 1 ? `${waiting[0]} counts` : `${waiting.length} stations count`;
  return { text: `${which} as soon as read in both positions.`, warns: false };
}

function willCheck(session: Session): string {
  if (kindWords[session.setup.kind].turn) return '';
  if (session.setup.kind === 'plate') return ' The lines that cross will.';
  const later = session.runs.length > 1 || addableRun(session);
  if (!later) return '';
  return kindWords[session.setup.kind].reads === 'tilt' ? ' The walk back will.' : ' The next sweep will.';
}
