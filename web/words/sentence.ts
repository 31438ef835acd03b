import type { Session } from '../../shared/session/fold.ts';
import { facingOf, type Placement, placementKey } from '../../shared/survey/way.ts';

/** What to do next, in the largest words, and one line of context. */
export interface Sentence {
  readonly what: string;
  readonly context: string;
}

export function pairText({ from, to }: { from: string; to: string }): string {
  return `${from} – ${to}`;
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** The end of the way that the plus end of the level points to on this walk. */
export function plusEnd({ setup }: Session, walk: Placement['walk']): string {
  return facingOf(setup, walk) === 1 ? setup.farEnd : setup.startEnd;
}

/** What to do next in the survey. `standsOn` is where the level still stands after a take, if it does. */
export function nextSentence(session: Session, standsOn: Placement | null): Sentence {
  const { next, setup } = session;
  const surface = capital(setup.surface);
  if (!next) return allRead(session);
  const walkPlan = session.plan.filter(({ walk }) => walk === next.walk);
  const at = walkPlan.findIndex((place) => placementKey(place) === placementKey(next)) + 1;
  const direction = next.walk === 'out' ? 'going out' : 'coming back';
  const context = `${surface}, ${direction}: reading ${at} of ${walkPlan.length}. Plus end to the ${plusEnd(session, next.walk)}.`;
  const pair = pairText(next);
  if (session.counted.has(placementKey(next))) return { what: `Read ${pair} again`, context };
  if (setup.level.source === 'typed') return { what: `Read the level on ${pair}`, context };
  const turn = next.walk === 'back' && setup.back === 'turned' && at === 1;
  if (turn && !walkPlan.some((place) => session.counted.has(placementKey(place)))) {
    return { what: `Turn the level end for end, set it on ${pair}`, context };
  }
  if (!standsOn) return { what: `Set the level on ${pair}`, context };
  const there = standsOn.from === next.from && standsOn.to === next.to;
  return {
    what: there ? `Lift the level, set it on ${pair} again` : `Move the level on to ${pair}`,
    context,
  };
}

function allRead({ walks, skipped, setup }: Session): Sentence {
  const left = skipped.size > 0 ? ` ${skipped.size} skipped.` : '';
  if (walks.includes('back')) {
    return {
      what: 'Out and back are read',
      context: `${capital(setup.surface)}.${left} Finish when you are content.`,
    };
  }
  return {
    what: 'The way out is read',
    context: `Walk back, so that every reading is checked by a second one, or finish.${left}`,
  };
}
