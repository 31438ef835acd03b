import { passes, relief } from '../state/drawing-actions.ts';
import { usePick } from '../state/page.ts';
import { goOn, leave, print, references, truth, working } from '../state/result-actions.ts';
import { ActionControl, Row } from './control.tsx';
import { BeginJob, KeepInJob } from './job/keep-in-job.tsx';
import { LessonPanel } from './lesson-panel.tsx';
import { Practice } from './practice.tsx';
import { TitleBlock } from './title-block.tsx';

/** Lower edge of the finished sheet: what the heights are against, where they come from, what comes next. */
export function ResultFoot() {
  const replay = usePick((state) => state.replay);
  const choice = usePick((state) => references.some((action) => action.can(state)));
  return (
    <footer class="foot">
      <section class="controls result" aria-label="What to do with the result">
        {replay?.lesson && !replay.writing && <LessonPanel replay={replay} />}
        {!replay?.lesson && <Practice />}
        <div class="rows">
          <KeepInJob />
          {choice && (
            <fieldset class="row" aria-label="Heights against">
              {references.map((action) => (
                <ActionControl key={action.id} action={action} hides />
              ))}
              <ActionControl action={working} />
            </fieldset>
          )}
          <Row>
            {!choice && <ActionControl action={working} />}
            <ActionControl action={relief} hides />
            <ActionControl action={passes} hides />
            <ActionControl action={truth} hides />
            <ActionControl action={print} />
            <BeginJob />
            <ActionControl action={goOn} hides />
            {!replay && <ActionControl action={leave} apart />}
          </Row>
        </div>
      </section>
      <TitleBlock />
    </footer>
  );
}
