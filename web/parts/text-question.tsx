import { useEffect, useRef, useState } from 'preact/hooks';
import { close } from '../state/actions.ts';
import { usePage } from '../state/page.ts';
import { Control, Row } from './control.tsx';

interface TextQuestionProps {
  readonly title: string;
  readonly answer: string;
  readonly longest: number;
  readonly testId?: string;
  onAnswer(text: string): void;
}

/** A question that is answered in a few words of one's own. */
export function TextQuestion({ title, answer, longest, testId, onAnswer }: TextQuestionProps) {
  const page = usePage();
  const field = useRef<HTMLInputElement>(null);
  const [text, setText] = useState('');
  useEffect(() => field.current?.focus(), []);
  return (
    <form
      class="question"
      onSubmit={(event) => {
        event.preventDefault();
        if (text.trim()) onAnswer(text.trim());
      }}
    >
      <label>
        <h2>{title}</h2>
        <input
          ref={field}
          data-testid={testId}
          autocomplete="off"
          maxLength={longest}
          value={text}
          onInput={(event) => setText(event.currentTarget.value)}
        />
      </label>
      <Row>
        <Control word={answer} hint="enter" kind="main" submit disabled={!text.trim()} />
        <Control word="Leave it" hint="escape" onClick={() => close(page)} />
      </Row>
    </form>
  );
}
