import { createContext } from 'preact';
import { useContext, useEffect, useReducer, useRef } from 'preact/hooks';
import type { CommandInput, SentError } from '../../shared/messages.ts';
import { type Connection, connect } from './connection.ts';
import { receive } from './incoming.ts';
import { initialState, type PageState, type Pointing } from './page-state.ts';
import { type Sounds, soundFor } from './sound.ts';
import { spokenFor, type Voice } from './speech.ts';
import { createStore, type Store } from './store.ts';

/** The page's state and everything that may be done to it. */
export interface Page {
  readonly store: Store<PageState>;
  /** Asks the daemon; a refusal is shown and sounded, and returned. */
  send(command: CommandInput): Promise<SentError | null>;
  point(pointing: Pointing): void;
  change(change: Partial<PageState>): void;
  /** The same where what changes hangs on what is there, with the sound that belongs to it. */
  turn(change: (state: PageState) => PageState): void;
  /** The device woke up, or has a network again. */
  wake(): void;
}

export function createPage(
  url: string,
  { sounds, voice }: { sounds: Sounds; voice: Voice },
  initial: Partial<PageState>,
): Page {
  const store = createStore<PageState>({ ...initialState, ...initial });
  const change = (part: Partial<PageState>) => store.set((state) => ({ ...state, ...part }));
  const turn = (next: (state: PageState) => PageState) => {
    const before = store.get();
    store.set(next);
    const sound = soundFor(before, store.get());
    if (sound && !store.get().muted) sounds.play(sound);
  };
  const connection: Connection = connect(url, {
    open() {
      const { session } = store.get().behind ?? store.get();
      if (session) void connection.ask({ do: 'since', seq: session.seq });
    },
    message: (message) =>
      turn((state) => {
        const after = receive(state, message, performance.now());
        const spoken = after.speech ? spokenFor(state, after) : null;
        if (spoken) voice.speak(spoken);
        return after;
      }),
    lost: () =>
      store.set((state) =>
        state.behind ? { ...state, behind: { ...state.behind, link: 'lost' } } : { ...state, link: 'lost' },
      ),
  });
  return {
    store,
    change,
    turn,
    wake() {
      const { session } = store.get().behind ?? store.get();
      connection.wake({ do: 'since', seq: session?.seq ?? 0 });
    },
    point: (pointing) => change({ pointing }),
    async send(command) {
      const refusal = await connection.ask(command);
      turn((state) => ({ ...state, refusal }));
      return refusal;
    },
  };
}

const context = createContext<Page | null>(null);
export const PageProvider = context.Provider;

export function usePage(): Page {
  const page = useContext(context);
  if (!page) throw new Error('a part of the page was drawn outside of it');
  return page;
}

/** What `pick` finds in the state; drawn again only when that changes. */
export function usePick<T>(pick: (state: PageState) => T): T {
  const { store } = usePage();
  const [, redraw] = useReducer((n: number) => n + 1, 0);
  const picked = pick(store.get());
  const latest = useRef({ pick, picked });
  latest.current = { pick, picked };
  useEffect(() => {
    const look = () => {
      const { pick, picked } = latest.current;
      if (!Object.is(pick(store.get()), picked)) redraw(0);
    };
    // What changed between drawing and now would else be missed.
    look();
    return store.watch(look);
  }, [store]);
  return picked;
}
