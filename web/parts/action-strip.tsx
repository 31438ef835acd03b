import type { ComponentChildren } from 'preact';
import { devices } from '../state/device-actions.ts';
import { help, language, mute, speech, theme } from '../state/look-actions.ts';
import { SmallControl } from './control.tsx';

interface ActionStripProps {
  readonly children?: ComponentChildren;
  readonly framed?: boolean;
}

/**
 * Outside the frame, because it is no part of the survey: how the page looks and sounds. While a survey is simulated the
 * place is short, and the language is changed in the help.
 */
export function ActionStrip({ children, framed }: ActionStripProps) {
  return (
    <aside class={`strip ${framed ? 'framed' : ''}`} aria-label="Outside the survey">
      {children ?? <p />}
      <SmallControl action={devices} hides />
      <SmallControl action={mute} />
      <SmallControl action={speech} />
      <SmallControl action={theme} />
      {!framed && <SmallControl action={language} />}
      <SmallControl action={help} />
    </aside>
  );
}
