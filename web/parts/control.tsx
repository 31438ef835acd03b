import type { ComponentChildren } from 'preact';
import type { Action } from '../state/actions.ts';
import { usePage, usePick } from '../state/page.ts';

interface ControlProps {
  readonly word: string;
  readonly hint?: string | undefined;
  readonly kind?: 'main' | 'plain' | undefined;
  readonly disabled?: boolean | undefined;
  readonly pressed?: boolean | undefined;
  readonly apart?: boolean | undefined;
  readonly testId?: string | undefined;
  readonly submit?: boolean | undefined;
  onClick?(): void;
}

/**
 * A large worded control. A press by hand doesn't leave the focus on it, so that the next press of the
 * space bar takes a reading and doesn't press the control again.
 */
export function Control(props: ControlProps) {
  const { word, hint, kind, disabled, pressed, apart, testId, submit, onClick } = props;
  return (
    <button
      type={submit ? 'submit' : 'button'}
      class={`control ${kind ?? ''} ${apart ? 'apart' : ''}`}
      disabled={disabled ?? false}
      aria-pressed={pressed}
      data-testid={testId}
      onClick={(event) => {
        if (event.detail > 0) event.currentTarget.blur();
        onClick?.();
      }}
    >
      <span class="word">{word}</span>
      {hint && <span class="hint">{hint}</span>}
    </button>
  );
}

interface ActionControlProps {
  readonly action: Action;
  readonly main?: boolean;
  readonly apart?: boolean;
  /** Left out of the picture instead of greyed when it can't be done. */
  readonly hides?: boolean;
}

/** The control of one action: the same word, key and condition as everywhere. */
export function ActionControl({ action, main, apart, hides }: ActionControlProps) {
  const page = usePage();
  const word = usePick((state) => action.word(state));
  const hint = usePick((state) => action.hint(state));
  const can = usePick((state) => action.can(state));
  const on = usePick((state) => action.on?.(state));
  if (hides && !can) return null;
  return (
    <Control
      word={word}
      hint={hint}
      kind={main ? 'main' : 'plain'}
      disabled={!can}
      pressed={on}
      apart={apart}
      testId={action.id}
      onClick={() => action.run(page, 'button')}
    />
  );
}

/** For what is no part of the work: the look of the page and its sound. */
export function SmallControl({ action, hides }: Pick<ActionControlProps, 'action' | 'hides'>) {
  const page = usePage();
  const word = usePick((state) => action.word(state));
  const hint = usePick((state) => action.hint(state));
  const can = usePick((state) => action.can(state));
  if (hides && !can) return null;
  return (
    <button
      type="button"
      class="small"
      data-testid={action.id}
      onClick={(event) => {
        if (event.detail > 0) event.currentTarget.blur();
        action.run(page, 'button');
      }}
    >
      {hint ? `${word} (${hint})` : word}
    </button>
  );
}

export function Row({ children }: { children: ComponentChildren }) {
  return <div class="row">{children}</div>;
}
