import type { LineFigures } from '../../shared/figures/line-figures.ts';
import type { Session } from '../../shared/session/fold.ts';
import type { Result } from '../../shared/sheet/result.ts';
import { amountSureTo, lineSentence, referenceWord, sureTo } from '../../shared/words.ts';
import type { Reference } from '../state/page-state.ts';
import type { SurveyResult } from '../state/survey-result.ts';
import { suspectOf } from './notices.ts';
import { capital, type Sentence } from './sentence.ts';

/** What the metal is like, and one line on how well that is known. */
export function resultSentence(
  session: Session,
  survey: SurveyResult | null,
  reference: Reference,
): Sentence {
  const surface = capital(session.setup.surface);
  if (!survey) {
    return { what: `${surface}: nothing was read`, context: 'There is no result without a reading.' };
  }
  const line = survey.line as LineFigures;
  return {
    what: `${lineSentence(surface, line, reference)}.`,
    context: [walksText(session, survey), partText(session, survey), verdictText(survey.result)]
      .filter(Boolean)
      .join(' '),
  };
}

function walksText(session: Session, survey: SurveyResult): string {
  const { fit } = survey.result;
  const back =
    session.walks.includes('back') &&
    [...session.counted.values()].some(({ place }) => place.walk === 'back');
  const spare =
    fit.degreesOfFreedom === 0
      ? 'nothing checks them'
      : `${fit.degreesOfFreedom} to spare, ${suspectOf(survey) ? 'one of them disagrees' : 'none of them disagrees'}`;
  return `${back ? 'Out and back' : 'One way only'}: ${session.counted.size} readings, ${spare}.`;
}

/** A result for a part of the way must say so: the rest may be anything. */
function partText({ setup }: Session, { stations }: SurveyResult): string {
  if (stations.length === setup.stations) return '';
  return `Only ${stations[0]?.name} to ${stations.at(-1)?.name} of ${setup.stations} stations.`;
}

/** "Limit 10 µm: within." For each limit that was agreed. */
export function verdictText({ verdicts }: Result): string {
  const said = {
    within: 'within',
    outside: 'outside',
    'cannot tell': 'cannot tell, the doubt straddles it',
  } as const;
  return verdicts.map(({ limit, verdict }) => `Limit ${limit} µm: ${said[verdict]}.`).join(' ');
}

/** What the straightness is against, for the figure in the corner. */
export function figureWords(
  survey: SurveyResult,
  reference: Reference,
): { digits: string; unit: string; against: string } {
  const { valueUm, uUm } = survey.line.straightness[reference];
  const [digits = ''] = amountSureTo(valueUm, uUm).split(' ');
  const first = survey.stations[0]?.name;
  const last = survey.stations.at(-1)?.name;
  return {
    digits,
    unit: `µm, ${sureTo(uUm)}`,
    against: reference === 'ends' ? `over the line ${first} to ${last}` : `over ${referenceWord(reference)}`,
  };
}
