import {
  finish,
  handsFree,
  note,
  repeat,
  skip,
  take,
  undo,
  walkBack,
} from '../state/actions.ts';
import { usePick } from '../state/page.ts';
import { ActionControl, Row } from './control.tsx';
import { Player } from './player.tsx';
import { Question } from './question.tsx';
import { TitleBlock } from './title-block.tsx';
import { TypedEntry } from './typed-entry.tsx';

/** Lower edge of the sheet: at the left what the hand needs, at the right the title block. */
export function Foot() {
  const asks = usePick((state) => state.pointing.at !== 'nothing' || state.session?.unitAlarm != null);
  const replay = usePick((state) => state.player !== null);
  return (
    <footer class="foot">
      {replay ? <Player /> : asks ? <Question /> : <SurveyControls />}
      <TitleBlock />
    </footer>
  );
}

function SurveyControls() {
  const typed = usePick((state) => state.session?.setup.level.source === 'typed');
  return (
    <div class="controls" role="group" aria-label="Controls of the survey">
      {typed ? <TypedEntry /> : <ActionControl action={take} main />}
      <div class="rows">
        <Row>
          <ActionControl action={undo} />
          <ActionControl action={repeat} />
          <ActionControl action={skip} />
          <ActionControl action={note} />
        </Row>
        <Row>
          {!typed && <ActionControl action={handsFree} />}
          <ActionControl action={walkBack} hides />
          <ActionControl action={finish} apart />
        </Row>
      </div>
    </div>
  );
}
