import { useEffect, useId, useRef, useState } from 'preact/hooks';
import { isWayscribeError } from '../../../shared/errors.ts';
import { parseTyped } from '../../../shared/live/typed.ts';
import type { Pose } from '../../../shared/proving/proving.ts';
import { capital } from '../../words/kinds.ts';
import { say } from '../../words/say.ts';
import { Control } from '../control.tsx';

/** For an instrument that is read by eye: the number as it is read, in graduations. */
export function TypedPose({ pose, onTyped }: { pose: Pose; onTyped(value: number): void }) {
  const id = useId();
  const field = useRef<HTMLInputElement>(null);
  const [text, setText] = useState('');
  const [wrong, setWrong] = useState<string | null>(null);
  useEffect(() => field.current?.focus(), [pose]);
  const send = (event: Event) => {
    event.preventDefault();
    try {
      const value = parseTyped(text);
      setText('');
      setWrong(null);
      onTyped(value);
    } catch (error) {
      if (!isWayscribeError(error)) throw error;
      setWrong(`${capital(error.detail)}: ${error.remedy}.`);
    }
  };
  return (
    <form class="typed" onSubmit={send}>
      <label for={id}>{say('Type the reading, in graduations')}</label>
      <div class="entry">
        <input
          id={id}
          ref={field}
          data-testid="typed"
          autocomplete="off"
          maxLength={40}
          value={text}
          aria-invalid={wrong !== null}
          onInput={(event) => setText(event.currentTarget.value)}
        />
        <Control word={say('Take')} hint={say('enter')} kind="main" submit testId="take" />
      </div>
      {wrong && <p class="wrong">{wrong}</p>}
    </form>
  );
}
