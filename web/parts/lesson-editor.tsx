import { useState } from 'preact/hooks';
import { isWayscribeError } from '../../shared/errors.ts';
import { type Lesson, languageOf, proveLesson, readLesson } from '../../shared/lesson/lesson.ts';
import { withoutNames } from '../../shared/lesson/without-names.ts';
import { usePage } from '../state/page.ts';
import { goTo, placeOfMoment, type Replay } from '../state/replay.ts';
import { replaying } from '../state/replaying.ts';
import { saveFile } from '../state/save-file.ts';
import { sealed } from '../state/seal.ts';
import { say } from '../words/say.ts';
import { Control } from './control.tsx';
import { Field } from './field.tsx';
import { PinForm } from './pin-form.tsx';

/** A lesson is written beside its recording: notes and questions pinned to moments, then saved as a file. */
export function LessonEditor({ replay }: { replay: Replay }) {
  const page = usePage();
  const [wrong, setWrong] = useState('');
  const lesson = replay.lesson!;
  const { header, seq } = replay.playback.recorded;
  /** What is drawn may be a frame old: what is changed is the lesson as it now is. */
  const change = (part: (now: Lesson) => Partial<Lesson>) => {
    const now = page.store.get().replay?.lesson ?? lesson;
    const next = { ...now, ...part(now) };
    const problem = problemOf(() => proveLesson(readLesson(JSON.stringify(next)), header, seq.at(-1) ?? 0));
    setWrong(problem);
    if (!problem) page.turn((state) => replaying(state, (known) => ({ ...known, lesson: next })));
    return !problem;
  };
  const field = (name: TextName, label: string) => (
    <LessonField
      label={label}
      name={name}
      value={lesson[name]}
      onChange={(text) => change(() => ({ [name]: text }))}
    />
  );
  return (
    <aside class="strip framed lesson editor" data-testid="lesson-editor" aria-label={say('Write a lesson')}>
      <h2>{say('Write a lesson beside this recording')}</h2>
      <p class="soft">
        {say(
          'Go to a moment on the time line, then pin a note or a question to it. The recording stays as it is.',
        )}
      </p>
      <PinForm
        at={seq[replay.place] ?? 0}
        onPin={(moment) =>
          change(({ moments }) => ({ moments: [...moments, moment].sort((a, b) => a.at - b.at) }))
        }
      />
      {wrong && (
        <p class="wrong" role="alert" data-testid="lesson-wrong">
          {wrong}
        </p>
      )}
      {lesson.moments.length > 0 && (
        <ol class="pinned">
          {lesson.moments.map((moment, k) => (
            <li key={k}>
              <button
                type="button"
                class="small"
                onClick={() =>
                  page.turn((state) => replaying(state, (known) => goTo(known, placeOfMoment(known, k))))
                }
              >
                {say('Event {at}', { at: moment.at })}
              </button>
              <span lang={languageOf(lesson)}>{moment.text}</span>
              <button
                type="button"
                class="small"
                onClick={() =>
                  change(({ moments }) => ({ moments: moments.filter((known) => known !== moment) }))
                }
              >
                {say('Take off')}
              </button>
            </li>
          ))}
        </ol>
      )}
      <div class="fields">
        {field('title', say('Title'))}
        {field('about', say('What happened'))}
        {field('lookFor', say('What to look for'))}
        {field('seen', say('What mathematics can see'))}
        {field('unseen', say('What it cannot see'))}
        <label class="tick-box">
          <input
            type="checkbox"
            checked={lesson.names === 'left out'}
            onChange={(event) =>
              change(() => ({ names: event.currentTarget.checked ? 'left out' : 'shown' }))
            }
          />
          {say('Leave names out')}
        </label>
      </div>
      <div class="row">
        <Control
          word={say('Save the lesson')}
          hint={say('as a file beside the recording')}
          testId="save-lesson"
          onClick={() => saveFile(`${lesson.recording}.lesson.json`, `${JSON.stringify(lesson, null, 2)}\n`)}
        />
        <Control
          word={say('Save the recording')}
          hint={
            lesson.names === 'left out'
              ? say('a copy without names; notes stay as written')
              : say('as it was opened')
          }
          testId="save-recording"
          onClick={() => void saveRecording(replay, lesson)}
        />
      </div>
    </aside>
  );
}

type TextName = 'title' | 'about' | 'lookFor' | 'seen' | 'unseen';

interface LessonFieldProps {
  readonly label: string;
  readonly name: TextName;
  readonly value: string;
  /** False when it was refused. */
  onChange(text: string): boolean;
}

/** One text of the lesson. It may be empty while it is written; left so, it says again what it said last. */
function LessonField({ label, name, value, onChange }: LessonFieldProps) {
  const [draft, setDraft] = useState<string | null>(null);
  return (
    <Field
      label={label}
      name={name}
      value={draft ?? value}
      onInput={(text) => setDraft(onChange(text) ? null : text)}
      onBlur={() => setDraft(null)}
    />
  );
}

async function saveRecording({ playback }: Replay, lesson: Lesson): Promise<void> {
  const { text } = playback;
  const shared = lesson.names === 'left out' ? await sealed(withoutNames(text)) : text;
  saveFile(`${lesson.recording}.jsonl`, shared);
}

function problemOf(check: () => void): string {
  try {
    check();
    return '';
  } catch (error) {
    if (isWayscribeError(error)) return error.message;
    throw error;
  }
}
