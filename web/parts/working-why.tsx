import { placeOf } from '../../shared/notice/reading.ts';
import type { ReadingBehind } from '../../shared/reduce/behind.ts';
import type { Session } from '../../shared/session/fold.ts';
import { placeWords } from '../../shared/survey/plan.ts';
import type { Lit } from '../state/lit.ts';
import { usePage } from '../state/page.ts';
import type { SurveyResult } from '../state/survey-result.ts';
import { say } from '../words/say.ts';
import { whyHeight, whyReading } from '../words/why.ts';

interface WhyProps {
  readonly session: Session;
  readonly survey: SurveyResult;
  readonly lit: Lit | null;
  readonly behind: readonly ReadingBehind[];
}

/** What is pointed at in the working, explained; and the way to ask about the reading that is doubted. */
export function Why({ session, survey, lit, behind }: WhyProps) {
  const page = usePage();
  const suspect = survey.result.readings.find((reading) => reading.suspect);
  const words = !lit
    ? [say('Press a height to see which readings make it, or a reading to see what checks it.')]
    : lit.is === 'reading'
      ? whyReading(session, survey.result, lit.place)
      : [whyHeight(session, lit, behind)];
  return (
    <div class="why" data-testid="why" aria-live="polite">
      {suspect && (
        <button
          type="button"
          class="small"
          data-testid="why-suspect"
          onClick={() => page.change({ lit: { is: 'reading', place: placeOf(suspect) } })}
        >
          {say('Why is {place} suspect?', { place: placeWords(placeOf(suspect)) })}
        </button>
      )}
      <p>{words.join(' ')}</p>
    </div>
  );
}
