import { Drawing } from '../parts/drawing.tsx';
import { Figure, Figures } from '../parts/figure.tsx';
import { Notes } from '../parts/notes.tsx';
import { NoticeLine } from '../parts/notice-line.tsx';
import { ResultFoot } from '../parts/result-foot.tsx';
import { ResultStrip } from '../parts/result-strip.tsx';
import { SentenceHead } from '../parts/sentence-head.tsx';
import { SheetMiddle } from '../parts/sheet-middle.tsx';
import { Working } from '../parts/working.tsx';
import { usePick } from '../state/page.ts';
import { type SurveyResult, surveyResult } from '../state/survey-result.ts';
import { shownFigures } from '../words/figures.ts';
import { firstOf, surveyNotices, suspectOf } from '../words/notices.ts';
import { resultSentence } from '../words/result-sentence.ts';
import { truthWords } from '../words/truth.ts';

/** The survey when it is finished: what the metal is like, how sure that is, and where it comes from. */
export function ResultView() {
  const session = usePick((state) => state.session);
  const reference = usePick((state) => state.reference);
  const working = usePick((state) => state.working);
  const laidOver = usePick((state) => state.truth);
  const taught = usePick(({ replay }) => Boolean(replay?.lesson && !replay.writing));
  if (!session) return null;
  const survey = surveyResult(session, reference);
  const { what, context } = resultSentence(session, survey, reference);
  const figures = survey ? shownFigures(session, survey, reference) : [];
  const [main] = figures;
  const truth = laidOver && survey ? truthWords(session, survey, reference) : '';
  // Only warnings stand beside a result: the rest is among its notes.
  const warnings = surveyNotices(session, survey).filter(({ warns }) => warns);
  return (
    <>
      <main class="sheet">
        <header class="head two">
          <SentenceHead what={what} context={context}>
            <NoticeLine {...(truth ? { notice: { text: truth, warns: false } } : firstOf(warnings))} />
          </SentenceHead>
          {survey && main && (
            <Figure figure={main} reference={survey.result.reference} several={figures.length > 1} />
          )}
        </header>
        <SheetMiddle>
          {survey?.result.kind !== 'plate' && <Figures figures={figures} />}
          {working ? (
            <Working session={session} reference={reference} />
          ) : (
            <Drawing
              session={session}
              survey={survey}
              reference={reference}
              laidOver={laidOver}
              standsOn={null}
              lifted={false}
              picked={null}
              suspect={suspectOf(survey)}
            />
          )}
          {survey && !working && !taught && <Notes notes={notesBeside(survey)} />}
        </SheetMiddle>
        <ResultFoot />
      </main>
      <ResultStrip />
    </>
  );
}

/** Notes that the drawing does not say already in words of its own. */
function notesBeside({ result, notes }: SurveyResult): readonly string[] {
  return result.kind === 'plate' ? notes.filter((note) => !/^(Shape|Grade): /.test(note)) : notes;
}
