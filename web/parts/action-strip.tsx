import type { ComponentChildren } from 'preact';
import { mute, theme } from '../state/actions.ts';
import { SmallControl } from './control.tsx';

/** Outside the frame, because it is no part of the survey: how the page looks and sounds. */
export function ActionStrip({ children, framed }: { children?: ComponentChildren; framed?: boolean }) {
  return (
    <aside class={`strip ${framed ? 'framed' : ''}`} aria-label="Outside the survey">
      {children ?? <p />}
      <SmallControl action={mute} />
      <SmallControl action={theme} />
    </aside>
  );
}
