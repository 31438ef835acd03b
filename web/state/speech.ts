import { placementsOf } from '../../shared/survey/plan.ts';
import { written } from '../words/reader.ts';
import { say } from '../words/say.ts';
import type { PageState } from './page-state.ts';

/** Says short things aloud by the browser's own voice. */
export interface Voice {
  speak(text: string): void;
}

/** What the step from one state to the next is told aloud as: where the instrument goes next, when that has changed. */
export function spokenFor(before: PageState, after: PageState): string | null {
  const { session, replay } = after;
  if (!session || session.ended || replay) return null;
  const even = session.sweeping?.by === 'even' && session.sweeping.begun;
  if (even && !before.session?.sweeping?.begun) {
    const run = session.plan.runs.find(({ id }) => id === session.sweeping?.run);
    const last = run && placementsOf(run).at(-1);
    return last ? say('evenly on to {station}', { station: spelled(last.at[0]) }) : null;
  }
  const [was, is] = [before.session?.next?.at.join(), session.next?.at.join()];
  if (was === is) return null;
  if (!session.next) return say('everything is read');
  const [from, to] = session.next.at.map(spelled);
  return to === undefined
    ? say('station {station}', { station: from ?? '' })
    : say('{from} to {to}', { from: from ?? '', to });
}

/** "F 7": a letter and a number, or it would be read as a word. */
function spelled(station: string): string {
  return station.replace(/([A-Za-z]+)(\d+)/, '$1 $2');
}

/** The newest words are the ones that count: what is still being said is broken off. */
export function createVoice(): Voice {
  return {
    speak(text) {
      if (!('speechSynthesis' in window)) return;
      speechSynthesis.cancel();
      const spoken = new SpeechSynthesisUtterance(written(text));
      spoken.lang = document.documentElement.lang;
      speechSynthesis.speak(spoken);
    },
  };
}
