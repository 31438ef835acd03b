import type { Placement } from '../../shared/survey/plan.ts';
import { AlongNeedles } from '../parts/along-needles.tsx';
import { Beforehand } from '../parts/beforehand.tsx';
import { Drawing } from '../parts/drawing.tsx';
import { Foot } from '../parts/foot.tsx';
import { LiveReading } from '../parts/live-reading.tsx';
import { NoticeLine } from '../parts/notice-line.tsx';
import { SentenceHead } from '../parts/sentence-head.tsx';
import { SettleTrace } from '../parts/settle-trace.tsx';
import { SheetMiddle } from '../parts/sheet-middle.tsx';
import { Strip } from '../parts/strip.tsx';
import { Working } from '../parts/working.tsx';
import { inTrouble, isLifted, standsOn, takesByButton } from '../state/needle.ts';
import { usePage, usePick } from '../state/page.ts';
import { mayControl, pointedAt } from '../state/page-state.ts';
import { surveyResult } from '../state/survey-result.ts';
import { firstOf, noNotice, surveyNotices, suspectOf } from '../words/notices.ts';
import { surveySentence } from '../words/survey-sentence.ts';

/** The survey while the level is being walked: what to do, what the level says, the part, the profile. */
export function SurveyView() {
  const what = usePick((state) => surveySentence(state).what);
  const context = usePick((state) => surveySentence(state).context);
  const typed = usePick((state) => state.session?.setup.instrument.source === 'typed');
  const byButton = usePick(takesByButton);
  const session = usePick((state) => state.session);
  const trouble = usePick(inTrouble);
  const working = usePick((state) => state.working);
  if (!session) return null;
  const survey = surveyResult(session, 'ends');
  return (
    <>
      <main class="sheet">
        <header class={`head ${typed ? 'one' : ''}`}>
          <SentenceHead what={what} context={context}>
            <NoticeLine {...(trouble ? noNotice : firstOf(surveyNotices(session, survey)))} />
          </SentenceHead>
          {typed ? null : (
            <>
              {/* Single readings have no rest to wait for; the place of the trace stays. */}
              {byButton ? <div class="trace" /> : <SettleTrace />}
              <LiveReading />
            </>
          )}
        </header>
        <AlongNeedles />
        <SheetMiddle>
          {working && session.counted.size > 0 ? (
            <Working session={session} reference="ends" />
          ) : (
            <LiveDrawing />
          )}
          <Beforehand />
        </SheetMiddle>
        <Foot />
      </main>
      <Strip />
    </>
  );
}

/** The drawing with the level on it: drawn again when something moved, not at every needle value. */
function LiveDrawing() {
  const page = usePage();
  const session = usePick((state) => state.session);
  const stands = usePick(standsOn);
  const lifted = usePick(isLifted);
  const trouble = usePick(inTrouble);
  const picked = usePick(pointedAt);
  const open = usePick((state) => state.replay === null && mayControl(state));
  if (!session) return null;
  const survey = surveyResult(session, 'ends');
  return (
    <Drawing
      session={session}
      survey={survey}
      reference="ends"
      standsOn={stands}
      lifted={lifted}
      stale={trouble}
      picked={picked}
      suspect={suspectOf(survey)}
      {...(open && {
        onPick: (place: Placement) => page.point({ at: 'place', place }),
      })}
    />
  );
}
