import { useState } from 'preact/hooks';
import { demoSetups } from '../../shared/session/demo-setups.ts';
import { ActionStrip } from '../parts/action-strip.tsx';
import { Control, Row } from '../parts/control.tsx';
import { DemoPart } from '../parts/demo-part.tsx';
import { FileOpener } from '../parts/file-opener.tsx';
import { Jobs } from '../parts/job/jobs.tsx';
import { Lessons } from '../parts/lessons.tsx';
import { NoticeLine } from '../parts/notice-line.tsx';
import { PracticeStart } from '../parts/practice-start.tsx';
import { Recordings } from '../parts/recordings.tsx';
import { SentenceHead } from '../parts/sentence-head.tsx';
import { usePage, usePick } from '../state/page.ts';
import { mayControl } from '../state/page-state.ts';
import { type Kind, kindWords } from '../words/kinds.ts';
import { say } from '../words/say.ts';

const words = {
  what: 'What is to be measured?',
  context: 'Set the survey up, or go on with one that was left.',
};
const demoWords = {
  what: 'Walk a worn bed that nobody can spoil',
  context: 'Instruments and machines are invented; everything else is as it would be on yours.',
};
const watchingWords = () => ({
  what: say('No survey is on'),
  context: say('It appears here as soon as one is begun.'),
});

/** Nothing is on: begin, go on, or look at what was measured. */
export function StartView() {
  const demo = usePick((state) => state.mode === 'demo');
  const controls = usePick(mayControl);
  return (
    <>
      <main class="sheet">
        <SentenceHead {...(controls ? (demo ? demoWords : words) : watchingWords())}>
          <NoticeLine notice={null} />
        </SentenceHead>
        {demo && <Jobs main />}
        {controls && (demo ? <DemoStart /> : <Start />)}
        {!demo && <Jobs />}
        {demo && <Lessons />}
        <Recordings />
        <FileOpener />
        {!demo && <Lessons />}
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
  const [practising, setPractising] = useState(false);
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
          word={say('Practise')}
          hint={say('something is wrong: find it')}
          testId="practise"
          pressed={practising}
          onClick={() => setPractising(!practising)}
        />
        <Control
          word="Set up a survey"
          hint="with your own figures"
          testId="set-up"
          onClick={() => page.point({ at: 'setup' })}
        />
      </Row>
      {practising && <PracticeStart />}
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
