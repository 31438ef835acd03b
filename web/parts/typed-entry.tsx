import { useEffect, useId, useRef, useState } from 'preact/hooks';
import { usePage, usePick } from '../state/page.ts';
import { unitWord } from '../words/live.ts';
import { say } from '../words/say.ts';
import { Control } from './control.tsx';

const beginsNumber = /^[\d+\-−.,]$/;

/** For a level that is read by eye: the number as it is read, sent as it was typed. */
export function TypedEntry() {
  const page = usePage();
  const id = useId();
  const field = useRef<HTMLInputElement>(null);
  const [text, setText] = useState('');
  /** What was typed and asked back: sent again as it stands, it counts. */
  const [askedBack, setAskedBack] = useState<string | null>(null);
  const instrument = usePick((state) => state.session?.setup.instrument);
  const next = usePick((state) => state.session?.next ?? null);
  useEffect(() => {
    if (!page.store.get().fieldLeft) field.current?.focus();
  }, [next]);
  useEffect(() => {
    // Digits and signs mean nothing else: they lead back to the field, and into it.
    const back = (event: KeyboardEvent) => {
      const { target } = event;
      if (target instanceof HTMLElement && target.matches('input, textarea, select')) return;
      if (beginsNumber.test(event.key) && !event.ctrlKey && !event.metaKey && !event.altKey)
        field.current?.focus();
    };
    addEventListener('keydown', back);
    return () => removeEventListener('keydown', back);
  }, []);
  if (!instrument) return null;
  const whole = instrument.graduation === 1;
  const unit = whole
    ? unitWord(instrument.unit)
    : `graduations of ${instrument.graduation} ${unitWord(instrument.unit)}`;
  const send = async (event: Event) => {
    event.preventDefault();
    const again = text === askedBack;
    const refusal = await page.send({ do: 'type', text, again });
    setAskedBack(refusal?.code === 'take.farOff' ? text : null);
    if (!refusal) setText('');
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
          onFocus={() => page.change({ fieldLeft: false })}
          onInput={(event) => setText(event.currentTarget.value)}
        />
        {text === askedBack ? (
          <Control
            word={say('Take it as it is')}
            hint={say('enter again')}
            kind="main"
            submit
            testId="take"
          />
        ) : (
          <Control word={say('Take')} hint={say('enter')} kind="main" submit testId="take" />
        )}
      </div>
      <p>{say('Plus when the plus end stands higher. Escape leads to the other keys, a digit back.')}</p>
    </form>
  );
}
