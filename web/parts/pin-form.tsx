import { useState } from 'preact/hooks';
import { type Answer, answerSchema, answers, type Moment } from '../../shared/lesson/lesson.ts';
import { answerWord } from '../words/lesson.ts';
import { say } from '../words/say.ts';
import { Control } from './control.tsx';
import { Choice, Field } from './field.tsx';

interface PinFormProps {
  /** Number of the event that the moment follows. */
  readonly at: number;
  /** False when it was refused: then what was written stays. */
  onPin(moment: Moment): boolean;
}

/** One note or question for the moment that is shown. */
export function PinForm({ at, onPin }: PinFormProps) {
  const [is, setIs] = useState<Moment['is']>('note');
  const [text, setText] = useState('');
  const [arrows, setArrows] = useState('');
  const [right, setRight] = useState<Answer>('wait');
  const [because, setBecause] = useState('');
  const ready = text.trim() !== '' && (is === 'note' || because.trim() !== '');
  const pin = () => {
    const common = { at, text: text.trim(), arrows: arrowsOf(arrows) };
    const done = onPin(is === 'note' ? { is, ...common } : { is, ...common, right, because: because.trim() });
    if (!done) return;
    setText('');
    setArrows('');
    setBecause('');
  };
  return (
    <form
      class="fields pin"
      onSubmit={(event) => {
        event.preventDefault();
        if (ready) pin();
      }}
    >
      <Choice
        label={say('Pin to this moment')}
        name="pin-kind"
        value={is}
        options={[
          ['note', say('a note')],
          ['stop', say('a question')],
        ]}
        onChoose={(value) => setIs(value === 'stop' ? 'stop' : 'note')}
      />
      <Field
        label={is === 'note' ? say('What is to be seen') : say('What you ask')}
        name="pin-text"
        value={text}
        onInput={setText}
        wide
      />
      <Field
        label={say('Arrows to stations')}
        name="pin-arrows"
        value={arrows}
        hint={say('F4 lowest; F6 proud')}
        onInput={setArrows}
      />
      {is === 'stop' && (
        <>
          <Choice
            label={say('A good hand would')}
            name="pin-right"
            value={right}
            options={answers.map((answer) => [answer, answerWord(answer)] as const)}
            onChoose={(value) => setRight(answerSchema.parse(value))}
          />
          <Field label={say('Because')} name="pin-because" value={because} onInput={setBecause} wide />
        </>
      )}
      <Control word={say('Pin it')} submit disabled={!ready} testId="pin" />
    </form>
  );
}

/** "F4 lowest; F6 proud" as two arrows, each with its words. */
function arrowsOf(text: string): Moment['arrows'] {
  return text
    .split(/[;,]/)
    .map((part) => part.trim())
    .filter(Boolean)
    .map((part) => {
      const [to = '', ...words] = part.split(/\s+/);
      return { to, says: words.join(' ') };
    });
}
