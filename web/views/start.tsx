import { ActionStrip } from '../parts/action-strip.tsx';
import { Control, Row } from '../parts/control.tsx';
import { NoticeLine } from '../parts/notice-line.tsx';
import { Recordings } from '../parts/recordings.tsx';
import { SentenceHead } from '../parts/sentence-head.tsx';
import { usePage, usePick } from '../state/page.ts';
import { demoForm, readForm } from '../state/setup-form.ts';

/** Nothing is on: begin, go on, or look at what was measured. */
export function StartView() {
  const page = usePage();
  const demo = usePick((state) => state.mode === 'demo');
  const walkDemo = (byItself: boolean) => async () => {
    const { setup } = readForm(demoForm);
    if (!setup || (await page.send({ do: 'start', setup }))) return;
    if (byItself) await page.send({ do: 'sim-walk', on: true });
  };
  return (
    <>
      <main class="sheet">
        <SentenceHead
          what={demo ? 'Walk a worn bed that nobody can spoil' : 'What is to be measured?'}
          context={
            demo
              ? 'The level and the machine are invented; everything else is as it would be on yours.'
              : 'Set the survey up, or go on with one that was left.'
          }
        >
          <NoticeLine notice={null} />
        </SentenceHead>
        <Row>
          {demo && (
            <>
              <Control
                word="Walk the demo bed"
                hint="it walks by itself"
                kind="main"
                testId="demo"
                onClick={walkDemo(true)}
              />
              <Control
                word="Walk it by hand"
                hint="you lift and set down"
                testId="demo-by-hand"
                onClick={walkDemo(false)}
              />
            </>
          )}
          <Control
            word="Set up a survey"
            hint={demo ? 'with your own figures' : 'part, way, level'}
            kind={demo ? 'plain' : 'main'}
            testId="set-up"
            onClick={() => page.point({ at: 'setup' })}
          />
        </Row>
        <Recordings />
      </main>
      <ActionStrip />
    </>
  );
}
