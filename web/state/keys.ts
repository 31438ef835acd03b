import { type Asked, close } from './actions.ts';
import { allActions } from './all-actions.ts';
import type { Page } from './page.ts';

/** Typing belongs to the field it is typed into, and a focused control keeps its own Enter and Space. */
function belongsElsewhere(event: KeyboardEvent): boolean {
  const target = event.target;
  if (!(target instanceof HTMLElement)) return false;
  if (target.matches('input:not([type="range"]), textarea, select')) return true;
  return (event.key === 'Enter' || event.key === ' ') && target.matches('button, a, summary, [tabindex="0"]');
}

/** The one listener for keys: the page can be driven with no pointer at all. */
export function listenToKeys(page: Page): void {
  addEventListener('keydown', (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const state = page.store.get();
    // The list of devices lies over the page and closes itself with Escape.
    if (state.devices) return;
    // Behind the help nothing is done by mistake.
    if (state.help) {
      if (event.key !== 'Escape' && event.key !== '?') return;
      event.preventDefault();
      return page.change({ help: false });
    }
    // From the field for typed readings, and from whatever is asked or refused, Escape leads to the other keys.
    if (event.key === 'Escape') {
      if (event.target instanceof HTMLElement) event.target.blur();
      page.change({ fieldLeft: true });
      if (state.pointing.at !== 'nothing' || state.refusal) {
        event.preventDefault();
        return close(page);
      }
    }
    if (belongsElsewhere(event)) return;
    // A question is open: only it is answered, so that a pedal doesn't take in the middle of a reason.
    if (state.pointing.at !== 'nothing') return;
    if (state.session?.unitAlarm && !state.replay) return;
    const key = event.key.toLowerCase();
    const action = allActions.find((known) => known.keys.includes(key) && known.can(state));
    if (!action) return;
    event.preventDefault();
    if (event.repeat) return;
    const asked: Asked = key === 'pagedown' ? 'pedal' : 'key';
    action.run(page, asked);
  });
}
