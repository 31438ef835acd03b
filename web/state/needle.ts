import type { InstrumentState } from '../../shared/messages.ts';
import { type Placement, placementKey } from '../../shared/survey/plan.ts';
import { text } from '../words/say.ts';
import type { PageState } from './page-state.ts';

/** The instrument whose needle is shown. */
export function instrumentOf(state: PageState): InstrumentState | null {
  return state.instruments.find(({ name }) => name === state.session?.setup.instrument.name) ?? null;
}

/** Whether the instrument takes by its own button, one reading at a press. */
export function takesByButton(state: PageState): boolean {
  return instrumentOf(state)?.kind === 'by-button';
}

/** Why the needle can't be believed now, in words; null when it is live. */
export function staleness(state: PageState): string | null {
  if (state.link === 'lost') return 'connection lost';
  if (state.replay) return null;
  const instrument = instrumentOf(state);
  if (!instrument) return state.live ? null : 'nothing heard yet';
  return linkStaleness(instrument);
}

/** Why nothing comes from an instrument, in words; null when it does. */
export function linkStaleness(instrument: InstrumentState): string | null {
  if (instrument.link === 'absent') return 'cable is out';
  if (instrument.link === 'faulted') return 'port fails';
  if (instrument.link === 'opening') return 'opening the port';
  if (instrument.silent) return instrument.unread ? unreadWords : 'silent';
  return null;
}

/** Stands where a value would: bytes come, and none that the profile can read. */
export const unreadWords = text('bytes that can’t be read');

/**
 * Where the level stands as far as the page can know: on the place of the last take until a move was
 * felt, then on the next one. Null when it is off the metal.
 */
export function standsOn(state: PageState): Placement | null {
  const { session, live } = state;
  if (!session || session.ended) return null;
  const last = session.takes.at(-1);
  const typed = session.setup.instrument.source === 'typed';
  const stays = !typed && live !== null && !live.armed && last !== undefined && last.out === undefined;
  return stays ? last.event.place : session.next;
}

/** Whether the level still stands where it was last read although the next place is another. */
export function mustMove(state: PageState): Placement | null {
  const next = state.session?.next;
  const stands = standsOn(state);
  return next && stands && placementKey(next) !== placementKey(stands) ? stands : null;
}

/** Whether the connection or the level is away: then that comes before anything else. */
export function inTrouble(state: PageState): boolean {
  const typed = state.session?.setup.instrument.source === 'typed';
  return state.link === 'lost' || (!typed && staleness(state) !== null);
}

export function isLifted(state: PageState): boolean {
  return state.live?.steadiness === 'moving' && staleness(state) === null;
}
