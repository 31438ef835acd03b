import type { ToPage } from '../../shared/messages.ts';
import { apply, fold } from '../../shared/session/fold.ts';
import { nothing, type PageState } from './page-state.ts';
import { extendTrace } from './settle-trace.ts';

/** The page after one message of the daemon. `now` is the page's own clock in ms. */
export function receive(state: PageState, message: ToPage, now: number): PageState {
  // A recording is played: what the daemon says is for the page behind it.
  if (state.behind) return { ...state, behind: receive(state.behind, message, now) };
  switch (message.type) {
    case 'hello':
      return greet(state, message);
    case 'events':
      return withEvents(state, message);
    case 'live':
      return {
        ...state,
        live: message.live,
        heardAt: now,
        trace: extendTrace(state.trace, message.live),
      };
    case 'instruments':
      return { ...state, instruments: message.instruments };
    case 'simulated':
      return { ...state, simulated: message.simulated };
    case 'player':
      return { ...state, player: message.player };
    case 'bench':
      return { ...state, bench: message.bench, needles: message.bench ? state.needles : {} };
    case 'bench-live':
      return { ...state, needles: { ...state.needles, [message.live.from]: message.live } };
    case 'refused':
      return { ...state, refusal: message.error };
    case 'answer':
      return state;
  }
}

function greet(state: PageState, hello: Extract<ToPage, { type: 'hello' }>): PageState {
  const { program, mode, instruments, simulated, player } = hello;
  const session = hello.session && {
    ...fold(hello.session.header, hello.session.events),
    seq: hello.session.seq,
  };
  const same = session !== null && session.header.id === state.session?.header.id;
  const fresh = same
    ? {}
    : {
        pointing: nothing,
        live: null,
        heardAt: null,
        trace: [],
        refusal: null,
        guess: null,
        working: false,
        lit: null,
        truth: false,
        relief: false,
        passes: false,
      };
  return {
    ...state,
    ...fresh,
    greeted: true,
    link: 'open',
    program,
    mode,
    session,
    instruments,
    simulated,
    player,
    bench: hello.bench ?? null,
  };
}

/** Events already folded, or of another session, change nothing. */
function withEvents(state: PageState, message: Extract<ToPage, { type: 'events' }>): PageState {
  if (!state.session || state.session.header.id !== message.id) return state;
  const before = state.session;
  const session = message.events
    .filter((event) => event.seq > before.seq)
    .reduce((folded, event) => apply(folded, event), before);
  if (session === before) return state;
  const taken = session.takes.length > before.takes.length;
  return { ...state, session, ...(taken && { refusal: null }) };
}
