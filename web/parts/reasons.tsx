import { useState } from 'preact/hooks';
import { close } from '../state/actions.ts';
import { usePage } from '../state/page.ts';
import { Control, Row } from './control.tsx';

interface ReasonsProps {
  readonly title: string;
  readonly reasons: readonly string[];
  onAnswer(reason: string): void;
}

/** Asks why: one touch, one digit, or a few words of one's own. */
export function Reasons({ title, reasons, onAnswer }: ReasonsProps) {
  const page = usePage();
  const [other, setOther] = useState(false);
  const [text, setText] = useState('');
  if (other) {
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
            maxLength={300}
            value={text}
            ref={(field) => field?.focus()}
            onInput={(event) => setText(event.currentTarget.value)}
          />
        </label>
        <Row>
          <Control word="That is why" hint="enter" kind="main" submit disabled={!text.trim()} />
          <Control word="Back" hint="escape" onClick={() => close(page)} />
        </Row>
      </form>
    );
  }
  return (
    <div
      class="question"
      role="group"
      aria-label={title}
      onKeyDown={(event) => {
        const reason = reasons[Number(event.key) - 1];
        if (reason) onAnswer(reason);
      }}
    >
      <h2>{title}</h2>
      <Row>
        {reasons.map((reason, k) => (
          <Control
            key={reason}
            word={reason}
            hint={String(k + 1)}
            takesFocus={k === 0}
            testId={`reason-${k + 1}`}
            onClick={() => onAnswer(reason)}
          />
        ))}
        <Control word="other" hint="in your words" onClick={() => setOther(true)} />
        <Control word="Leave it" hint="escape" onClick={() => close(page)} />
      </Row>
    </div>
  );
}
