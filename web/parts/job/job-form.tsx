import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { close } from '../../state/actions.ts';
import { usePage } from '../../state/page.ts';
import { say } from '../../words/say.ts';
import { Control, Row } from '../control.tsx';

interface JobFormProps {
  readonly title: string;
  readonly answer: string;
  readonly disabled?: boolean;
  readonly children: ComponentChildren;
  onAnswer(): void;
}

/** A question about the job: fields, one large answer, and a way out. */
export function JobForm({ title, answer, disabled, children, onAnswer }: JobFormProps) {
  const page = usePage();
  const form = useRef<HTMLFormElement>(null);
  // The question takes the focus itself, unless one of its fields has: the next key is meant for it.
  useEffect(() => {
    if (!form.current?.contains(document.activeElement)) form.current?.focus();
  }, []);
  return (
    <form
      class="question job-form"
      noValidate
      ref={form}
      tabIndex={-1}
      data-testid="job-form"
      onSubmit={(event) => {
        event.preventDefault();
        onAnswer();
      }}
    >
      <h2>{title}</h2>
      {children}
      <Row>
        <Control
          word={answer}
          hint={say('enter')}
          kind="main"
          submit
          disabled={disabled}
          testId="job-answer"
        />
        <Control word={say('Leave it')} hint={say('escape')} apart onClick={() => close(page)} />
      </Row>
    </form>
  );
}
