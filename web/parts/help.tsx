import { useLayoutEffect, useRef } from 'preact/hooks';
import type { Action } from '../state/actions.ts';
import { allActions } from '../state/all-actions.ts';
import { language } from '../state/look-actions.ts';
import { usePage, usePick } from '../state/page.ts';
import { allCautions, cautionsOf } from '../words/cautions.ts';
import { say } from '../words/say.ts';
import { signs } from '../words/signs.ts';
import { Control, SmallControl } from './control.tsx';

/** The help: every key, what the signs mean, and what can hurt. It lies over the sheet until it is put away. */
export function Help() {
  const page = usePage();
  const kind = usePick((state) => state.session?.setup.kind);
  const panel = useRef<HTMLElement>(null);
  useLayoutEffect(() => panel.current?.focus(), []);
  return (
    <section
      class="help"
      ref={panel}
      tabIndex={-1}
      role="dialog"
      aria-modal="true"
      aria-label={say('Help')}
      data-testid="help-panel"
    >
      <header>
        <h1>{say('Help')}</h1>
        <SmallControl action={language} />
        <Control
          word={say('Close')}
          hint={say('? or escape')}
          kind="main"
          testId="help-close"
          onClick={() => page.change({ help: false })}
        />
      </header>
      <div class="help-columns">
        <section aria-label={say('Keys')}>
          <h2>{say('Keys')}</h2>
          <dl class="keys">
            {allActions.map((action) => (
              <KeyRow key={action.id} action={action} />
            ))}
            <div>
              <dt>esc</dt>
              <dd>{say('Leave what is asked')}</dd>
            </div>
          </dl>
        </section>
        <section aria-label={say('Signs')}>
          <h2>{say('Signs')}</h2>
          <dl class="signs">
            {signs().map(([sign, meaning]) => (
              <div key={sign}>
                <dt>{sign}</dt>
                <dd>{meaning}</dd>
              </div>
            ))}
          </dl>
        </section>
        <section aria-label={say('Take care')} data-testid="help-cautions">
          <h2>{say('Take care')}</h2>
          <ul>
            {(kind ? cautionsOf(kind) : allCautions()).map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ul>
        </section>
      </div>
    </section>
  );
}

const keyNames: Readonly<Record<string, string>> = {
  ' ': 'space',
  enter: 'enter',
  pagedown: 'page down, pedal',
  arrowleft: '←',
  arrowright: '→',
};

function KeyRow({ action }: { action: Action }) {
  const word = usePick((state) => action.word(state));
  const can = usePick((state) => action.can(state));
  return (
    <div class={can ? '' : 'later'}>
      <dt>{action.keys.map((key) => keyNames[key] ?? key.toUpperCase()).join(', ')}</dt>
      <dd>{word}</dd>
    </div>
  );
}
