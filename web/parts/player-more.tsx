import type { ComponentChildren } from 'preact';
import { help, language, mute, theme } from '../state/look-actions.ts';
import { say } from '../words/say.ts';
import { SmallControl } from './control.tsx';

/** What is seldom wanted while a recording plays: look and sound, help, and what can be taken home. */
export function PlayerMore({ children }: { children?: ComponentChildren }) {
  return (
    <details class="player-more" data-testid="player-more">
      <summary class="small">{say('More')}</summary>
      <div>
        <SmallControl action={mute} />
        <SmallControl action={theme} />
        <SmallControl action={language} />
        <SmallControl action={help} />
        {children}
      </div>
    </details>
  );
}
