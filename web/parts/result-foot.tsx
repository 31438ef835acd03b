import { usePick } from '../state/page.ts';
import { goOn, leave, print, references, truth, working } from '../state/result-actions.ts';
import { ActionControl, Row } from './control.tsx';
import { TitleBlock } from './title-block.tsx';

/** Lower edge of the finished sheet: what the straightness is against, where it comes from, what comes next. */
export function ResultFoot() {
  const replay = usePick((state) => state.player !== null);
  return (
    <footer class="foot">
      <section class="controls result" aria-label="What to do with the result">
        <div class="rows">
          <fieldset class="row" aria-label="Heights against">
            {references.map((action) => (
              <ActionControl key={action.id} action={action} hides />
            ))}
            <ActionControl action={working} />
          </fieldset>
          <Row>
            <ActionControl action={truth} hides />
            <ActionControl action={print} />
            <ActionControl action={goOn} hides />
            {!replay && <ActionControl action={leave} apart />}
          </Row>
        </div>
      </section>
      <TitleBlock />
    </footer>
  );
}
