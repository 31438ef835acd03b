import { useEffect, useRef, useState } from 'preact/hooks';
import { usePage, usePick } from '../state/page.ts';
import { unitWord } from '../words/live.ts';

/** For a level that is read by eye: the number as it is read, sent as it was typed. */
export function TypedEntry() {
  const page = usePage();
  const field = useRef<HTMLInputElement>(null);
  const [text, setText] = useState('');
  const level = usePick((state) => state.session?.setup.level);
  const next = usePick((state) => state.session?.next ?? null);
  useEffect(() => field.current?.focus(), [next]);
  if (!level) return null;
  const unit =
    level.graduation === 1
      ? unitWord(level.unit)
      : `graduations of ${level.graduation} ${unitWord(level.unit)}`;
  const send = async (event: Event) => {
    event.preventDefault();
    if (!(await page.send({ do: 'type', text }))) setText('');
  };
  return (
    <form class="typed" onSubmit={send}>
      <label>
        <span class="hint">{`Reading, ${unit}`}</span>
        <input
          ref={field}
          data-testid="typed"
          inputMode="text"
          autocomplete="off"
          maxLength={40}
          value={text}
          disabled={next === null}
          onInput={(event) => setText(event.currentTarget.value)}
        />
        <span class="hint">plus: bubble towards the plus end</span>
      </label>
      <button type="submit" class="control main" disabled={next === null} data-testid="take">
        <span class="word">Take</span>
        <span class="hint">enter</span>
      </button>
    </form>
  );
}
