import {
  type Action,
  driftOff,
  finish,
  handsFree,
  insist,
  note,
  repeat,
  skip,
  sweepEven,
  sweepMarks,
  take,
  turned,
  undo,
  walkBack,
} from '../state/actions.ts';
import { relief } from '../state/drawing-actions.ts';
import { takesByButton } from '../state/needle.ts';
import { addableRun, isRepeat } from '../state/on-plan.ts';
import { usePick } from '../state/page.ts';
import type { PageState } from '../state/page-state.ts';
import { surveyResult } from '../state/survey-result.ts';
import { ActionControl, Row } from './control.tsx';
import { Happenings } from './happenings.tsx';
import { LessonPanel } from './lesson-panel.tsx';
import { Question } from './question.tsx';
import { TitleBlock } from './title-block.tsx';
import { TypedEntry } from './typed-entry.tsx';
import { WedgeEntry } from './wedge-entry.tsx';

/** Lower edge of the sheet: at the left what the hand needs, at the right the title block. */
export function Foot() {
  const asks = usePick((state) => state.pointing.at !== 'nothing' || state.session?.unitAlarm != null);
  const replay = usePick((state) => state.replay !== null);
  return (
    <footer class="foot">
      {replay ? <ReplayWords /> : asks ? <Question /> : <SurveyControls />}
      <TitleBlock />
    </footer>
  );
}

/** In a replay: what the teacher says, or what was done last. */
function ReplayWords() {
  const replay = usePick((state) => state.replay);
  return replay?.lesson && !replay.writing ? <LessonPanel replay={replay} /> : <Happenings />;
}

function SurveyControls() {
  const typed = usePick((state) => state.session?.setup.instrument.source === 'typed');
  const keyed = usePick((state) => state.session?.setup.instrument.keyed === true);
  const byButton = usePick(takesByButton);
  const main = usePick(mainAction);
  return (
    <section class="controls" aria-label="Controls of the survey">
      {typed && main === take ? (
        keyed ? (
          <WedgeEntry />
        ) : (
          <TypedEntry />
        )
      ) : (
        <div class="column">
          <ActionControl action={main} main />
          <ActionControl action={insist} hides />
        </div>
      )}
      <div class="rows">
        <Row>
          <ActionControl action={undo} />
          <ActionControl action={repeat} />
          <ActionControl action={skip} />
          <ActionControl action={note} />
          <ActionControl action={sweepMarks} hides />
        </Row>
        <Row>
          {!typed && !byButton && <ActionControl action={handsFree} />}
          <ActionControl action={sweepEven} hides />
          <ActionControl action={turned} hides />
          <ActionControl action={driftOff} hides />
          <ActionControl action={relief} hides />
          {main !== walkBack && <ActionControl action={walkBack} hides />}
          {main !== finish && <ActionControl action={finish} apart />}
        </Row>
      </div>
    </section>
  );
}

/** What the largest control does: take while something is open, then walk back, then finish. */
function mainAction({ session }: PageState): Action {
  if (!session || session.next) return take;
  const checked = (surveyResult(session, 'ends')?.result.fit.degreesOfFreedom ?? 0) > 0;
  const more = addableRun(session);
  return checked || !more || isRepeat(more) ? finish : walkBack;
}
