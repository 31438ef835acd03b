import { demoSetups } from '../../shared/session/demo-setups.ts';
import { ActionStrip } from '../parts/action-strip.tsx';
import { Control, Row } from '../parts/control.tsx';
import { DemoPart } from '../parts/demo-part.tsx';
import { Jobs } from '../parts/job/jobs.tsx';
import { NoticeLine } from '../parts/notice-line.tsx';
import { Recordings } from '../parts/recordings.tsx';
import { SentenceHead } from '../parts/sentence-head.tsx';
import { usePage, usePick } from '../state/page.ts';
import { type Kind, kindWords } from '../words/kinds.ts';

/** Nothing is on: begin, go on, or look at what was measured. */
export function StartView() {
  const demo = usePick((state) => state.mode === 'demo');
  return (
    <>
      <main class="sheet">
        <SentenceHead
          what={demo ? 'Walk a worn bed that nobody can spoil' : 'What is to be measured?'}
          context={
            demo
              ? 'Instruments and machines are invented; everything else is as it would be on yours.'
              : 'Set the survey up, or go on with one that was left.'
          }
        >
          <NoticeLine notice={null} />
        </SentenceHead>
        {demo && <Jobs main />}
        {demo ? <DemoStart /> : <Start />}
        {!demo && <Jobs />}
        <Recordings />
      </main>
      <ActionStrip />
    </>
  );
}

function Start() {
  const page = usePage();
  return (
    <Row>
      <Control
        word="Set up a survey"
        hint="part, instrument, how it is walked"
        kind="main"
        testId="set-up"
        onClick={() => page.point({ at: 'setup' })}
      />
      <Control
        word="Get to know an instrument"
        hint="its port, sign, unit and spread"
        testId="prove"
        onClick={() => page.point({ at: 'proving' })}
      />
    </Row>
  );
}

const others = (Object.keys(kindWords) as Kind[]).filter((kind) => kind !== 'way');

function DemoStart() {
  const page = usePage();
  const begin = (kind: Kind, byItself: boolean) => async () => {
    if (await page.send({ do: 'start', setup: demoSetups[kind] })) return;
    if (byItself) await page.send({ do: 'sim-walk', on: true });
  };
  return (
    <>
      <DemoPart />
      <Row>
        <Control
          word="Walk the demo bed"
          hint="it walks by itself"
          testId="demo"
          onClick={begin('way', true)}
        />
        <Control
          word="Walk it by hand"
          hint="you lift and set down"
          testId="demo-by-hand"
          onClick={begin('way', false)}
        />
        <Control
          word="Set up a survey"
          hint="with your own figures"
          testId="set-up"
          onClick={() => page.point({ at: 'setup' })}
        />
      </Row>
      <h2>Or watch another survey</h2>
      <div class="kinds">
        {others.map((kind) => (
          <Control
            key={kind}
            word={kindWords[kind].name}
            hint={kindWords[kind].what}
            testId={`demo-${kind}`}
            onClick={begin(kind, true)}
          />
        ))}
      </div>
    </>
  );
}
