import type { ComponentChildren } from 'preact';

interface SentenceHeadProps {
  readonly what: string;
  readonly context: string;
  readonly children?: ComponentChildren;
}

/** The largest words of the sheet, told to who can't see them when they change. */
export function SentenceHead({ what, context, children }: SentenceHeadProps) {
  return (
    <div class="sentence">
      <div aria-live="polite">
        <h1 data-testid="sentence">{what}</h1>
        <p data-testid="context">{context}</p>
      </div>
      {children}
    </div>
  );
}
