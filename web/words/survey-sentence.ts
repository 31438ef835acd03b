import { placeWords } from '../../shared/survey/plan.ts';
import { instrumentOf, mustMove, staleness, unreadWords } from '../state/needle.ts';
import type { PageState } from '../state/page-state.ts';
import { capital, instrumentWord } from './kinds.ts';
import { say } from './say.ts';
import { nextSentence, type Sentence } from './sentence.ts';

/** The sentence of the survey view: trouble with the cable or the connection comes before the next place. */
export function surveySentence(state: PageState): Sentence {
  const { session, replay } = state;
  if (!session) return { what: '', context: '' };
  const next = session.next ? `${placeWords(session.next)} comes next. ` : '';
  const safe = `${session.counted.size} readings are safe on disk.`;
  if (state.link === 'lost') {
    return { what: 'Connection lost', context: `Trying again by itself. ${next}${safe}` };
  }
  const sentence = nextSentence(session, mustMove(state));
  if (replay || session.setup.instrument.source === 'typed') return sentence;
  const instrument = instrumentOf(state);
  const why = instrument?.error ? `${capital(instrument.error.message)}. ` : '';
  const tool = instrumentWord(session.setup.kind);
  switch (staleness(state)) {
    case 'cable is out':
      return { what: `Plug the ${tool} in again`, context: `${why}${next}${safe}` };
    case 'port fails':
      return {
        what: `The port of the ${tool} fails`,
        context: `${why}${instrument?.error?.remedy ?? ''} ${safe}`,
      };
    case 'silent':
      return { what: `The ${tool} is silent`, context: `See to its cable and its battery. ${next}${safe}` };
    case unreadWords:
      return {
        what: `What the ${tool} sends can’t be read`,
        context: `Its speed, its parity or what it sends was set otherwise: set it back. ${next}${safe}`,
      };
    default:
      return waitsForMove(state) ? { ...sentence, context: say(notFelt, { tool }) } : sentence;
  }
}

const notFelt =
  'The {tool} is steady but was not felt to move: lift it and set it on its place, or press Take if it stands there.';

/** Steady, and yet nothing is taken without a hand: only a person can say that it stands on its place. */
function waitsForMove({ live, session }: PageState): boolean {
  return (
    session?.handsFree === true &&
    session.next !== null &&
    live?.steadiness === 'steady' &&
    live.armed &&
    live.moved === false
  );
}
