import { useEffect, useId, useRef, useState } from 'preact/hooks';
import { usePage, usePick } from '../state/page.ts';
import { unitWord } from '../words/live.ts';
import { Control } from './control.tsx';

/** For a level that is read by eye: the number as it is read, sent as it was typed. */
export function TypedEntry() {
  const page = usePage();
  const id = useId();
  const field = useRef<HTMLInputElement>(null);
  const [text, setText] = useState('');
  const instrument = usePick((state) => state.session?.setup.instrument);
  const next = usePick((state) => state.session?.next ?? null);
  useEffect(() => field.current?.focus(), [next]);
  if (!instrument) return null;
  const whole = instrument.graduation === 1;
  const unit = whole
    ? unitWord(instrument.unit)
    : `graduations of ${instrument.graduation} ${unitWord(instrument.unit)}`;
  const send = async (event: Event) => {
    event.preventDefault();
    if (!(await page.send({ do: 'type', text }))) setText('');
  };
  return (
    <form class="typed" onSubmit={send}>
      <label for={id}>{`Type the reading, ${unit}`}</label>
      <div class="entry">
        <input
          id={id}
          ref={field}
          data-testid="typed"
          autocomplete="off"
          maxLength={40}
          value={text}
          onInput={(event) => setText(event.currentTarget.value)}
        />
        <Control word="Take" hint="enter" kind="main" submit testId="take" />
      </div>
      <p>Plus when the plus end stands higher. Escape leaves the field to the other keys.</p>
    </form>
  );
}
