import type { ComponentChildren } from 'preact';
import { usePick } from '../state/page.ts';
import { say } from '../words/say.ts';

/** What stands between head and foot of a sheet. Above a player it scrolls, and so can be reached by key. */
export function SheetMiddle({ children }: { children: ComponentChildren }) {
  const replay = usePick((state) => state.replay !== null);
  const reached = { tabIndex: 0, role: 'group', 'aria-label': say('Drawing and working') } as const;
  return (
    <div class="sheet-middle" {...(replay && reached)}>
      {children}
    </div>
  );
}
