import type { ComponentChildren } from 'preact';
import { answers, languageOf } from '../../shared/lesson/lesson.ts';
import { usePage } from '../state/page.ts';
import { askedNow, type Replay } from '../state/replay.ts';
import { answered, replaying } from '../state/replaying.ts';
import { answerWord } from '../words/lesson.ts';
import { say } from '../words/say.ts';
import { Control } from './control.tsx';

/** What the teacher says at this moment of the recording, or asks. */
export function LessonPanel({ replay }: { replay: Replay }) {
  const lesson = replay.lesson!;
  const lang = languageOf(lesson);
  const { moment } = replay;
  if (moment < 0) {
    return (
      <Panel title={lesson.title} lang={lang} testId="lesson-begin">
        <p lang={lang}>{lesson.about}</p>
        <p>
          <b>{say('Look for:')}</b> <span lang={lang}>{lesson.lookFor}</span>
        </p>
      </Panel>
    );
  }
  if (moment >= lesson.moments.length) {
    return (
      <Panel title={say('What mathematics can see, and what it cannot')} testId="lesson-end">
        <p>
          <b>{say('It sees:')}</b> <span lang={lang}>{lesson.seen}</span>
        </p>
        <p>
          <b>{say('It does not see:')}</b> <span lang={lang}>{lesson.unseen}</span>
        </p>
      </Panel>
    );
  }
  const count = say('moment {at} of {all}', { at: moment + 1, all: lesson.moments.length });
  const shown = lesson.moments[moment]!;
  if (shown.is === 'note') {
    return (
      <Panel title={say('Word of the teacher, {count}', { count })} testId="lesson-note">
        <p lang={lang}>{shown.text}</p>
      </Panel>
    );
  }
  return <Stop key={moment} replay={replay} stop={shown} count={count} />;
}

interface StopProps {
  readonly replay: Replay;
  readonly stop: Extract<NonNullable<Replay['lesson']>['moments'][number], { is: 'stop' }>;
  readonly count: string;
}

/** A question: what follows is hidden until it is answered, then it is said what a good hand would have done. */
function Stop({ replay, stop, count }: StopProps) {
  const page = usePage();
  const given = replay.answers[replay.moment];
  const asks = askedNow(replay) !== null;
  const right = given === stop.right;
  const lang = languageOf(replay.lesson!);
  return (
    <Panel title={say('Question, {count}', { count })} testId={asks ? 'lesson-asks' : 'lesson-answered'}>
      <p lang={lang}>{stop.text}</p>
      {asks ? (
        <fieldset class="row" aria-label={say('Your answer')}>
          {answers.map((answer) => (
            <Control
              key={answer}
              word={answerWord(answer)}
              testId={`answer-${answer}`}
              onClick={() => page.turn((state) => replaying(state, (known) => answered(known, answer)))}
            />
          ))}
        </fieldset>
      ) : (
        <p role="status">
          <b>
            {right
              ? say('{answer}: so would a good hand.', { answer: answerWord(stop.right) })
              : say('You said “{given}”. A good hand: “{right}”.', {
                  given: given ? answerWord(given) : '',
                  right: answerWord(stop.right),
                })}
          </b>{' '}
          <span lang={lang}>{stop.because}</span>
        </p>
      )}
    </Panel>
  );
}

function Panel(props: { title: string; lang?: string; testId: string; children: ComponentChildren }) {
  return (
    <section class="lesson" data-testid={props.testId} aria-live="polite">
      <h2 {...(props.lang && { lang: props.lang })}>{props.title}</h2>
      {props.children}
    </section>
  );
}
