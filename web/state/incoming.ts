import type { Live, ToPage } from '../../shared/messages.ts';
import { apply, fold } from '../../shared/session/fold.ts';
import { nothing, type PageState } from './page-state.ts';
import { extendTrace } from './settle-trace.ts';
import { stillTrue } from './still-true.ts';

/** The page after one message of the daemon. `now` is the page's own clock in ms. */
export function receive(state: PageState, message: ToPage, now: number): PageState {
  // A recording is played: what the daemon says is for the page behind it.
  if (state.behind) return { ...state, behind: receive(state.behind, message, now) };
  switch (message.type) {
    case 'hello':
      return greet(state, message);
    case 'access':
      return { ...state, access: message.access, lan: message.lan };
    case 'events':
      return withEvents(state, message);
    case 'live':
      return withoutOldRefusal(withNeedle(state, message.live, now));
    case 'instruments':
      return { ...state, instruments: message.instruments };
    case 'simulated':
      return { ...state, simulated: message.simulated };
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

/** The needle that is moved has a trace; those that only listen along have not. */
function withNeedle(state: PageState, live: Live, now: number): PageState {
  const needles = { ...state.needles, [live.from]: live };
  if (live.from !== state.session?.setup.instrument.name) return { ...state, needles };
  return { ...state, needles, live, heardAt: now, trace: extendTrace(state.trace, live) };
}

function greet(state: PageState, hello: Extract<ToPage, { type: 'hello' }>): PageState {
  const { program, mode, instruments, simulated } = hello;
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
        needles: {},
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
  return withoutOldRefusal({ ...state, session, ...(taken && { refusal: null }) });
}

function withoutOldRefusal(state: PageState): PageState {
  return state.refusal && !stillTrue(state.refusal, state) ? { ...state, refusal: null } : state;
}
