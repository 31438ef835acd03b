import { instrumentOf, mustMove, staleness } from '../state/needle.ts';
import type { PageState } from '../state/page-state.ts';
import { capital, nextSentence, pairText, type Sentence } from './sentence.ts';

/** The sentence of the survey view: trouble with the cable or the connection comes before the next place. */
export function surveySentence(state: PageState): Sentence {
  const { session, player } = state;
  if (!session) return { what: '', context: '' };
  const next = session.next ? `${pairText(session.next)} comes next. ` : '';
  const safe = `${session.counted.size} readings are safe on disk.`;
  if (state.link === 'lost') {
    return { what: 'Connection lost', context: `Trying again by itself. ${next}${safe}` };
  }
  const sentence = nextSentence(session, mustMove(state));
  if (player || session.setup.level.source === 'typed') return sentence;
  const instrument = instrumentOf(state);
  const why = instrument?.error ? `${capital(instrument.error.message)}. ` : '';
  switch (staleness(state)) {
    case 'cable is out':
      return { what: 'Plug the level in again', context: `${why}${next}${safe}` };
    case 'port fails':
      return {
        what: 'The port of the level fails',
        context: `${why}${instrument?.error?.remedy ?? ''} ${safe}`,
      };
    case 'silent':
      return { what: 'The level is silent', context: `See to its cable and its battery. ${next}${safe}` };
    default:
      return sentence;
  }
}
