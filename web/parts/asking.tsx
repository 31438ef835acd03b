import type { ComponentChildren } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';

interface AskingProps {
  readonly title: string;
  readonly alarms?: boolean;
  readonly testId?: string;
  /** Answers by key, wherever the focus is; says whether the key meant something. */
  onKey?(key: string): boolean;
  readonly children: ComponentChildren;
}

/**
 * A question in the place of the controls. It takes the focus itself, not one of its answers: a pedal pressed
 * by mistake answers nothing.
 */
export function Asking({ title, alarms, testId, onKey, children }: AskingProps) {
  const section = useRef<HTMLElement>(null);
  const answer = useRef(onKey);
  answer.current = onKey;
  useLayoutEffect(() => {
    section.current?.focus();
    const listen = (event: KeyboardEvent) => {
      if (event.target instanceof HTMLInputElement || event.ctrlKey || event.metaKey || event.altKey) return;
      if (!event.repeat && answer.current?.(event.key)) event.preventDefault();
    };
    addEventListener('keydown', listen);
    return () => removeEventListener('keydown', listen);
  }, []);
  return (
    <section
      class="question"
      ref={section}
      tabIndex={-1}
      role={alarms ? 'alert' : undefined}
      aria-label={title}
      data-testid={testId}
    >
      <h2>{title}</h2>
      {children}
    </section>
  );
}
