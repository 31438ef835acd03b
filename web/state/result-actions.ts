import type { Session } from '../../shared/session/fold.ts';
import { referencesOf } from '../words/kinds.ts';
import type { Action } from './actions.ts';
import { mayControl, type PageState, type Reference } from './page-state.ts';
import { closeReplay } from './replaying.ts';

/** The reference in use: the chosen one, or the first that the kind knows. */
function inUse({ setup }: Session, chosen: Reference): Reference | undefined {
  const known = referencesOf(setup.kind);
  return known.includes(chosen) ? chosen : known[0];
}

const against = (reference: Reference, key: string, word: string, hint: string): Action => ({
  id: `against-${reference}`,
  word: () => word,
  keys: [key],
  hint: () => `${key}, ${hint}`,
  can: ({ session }) => session?.ended === true && referencesOf(session.setup.kind).includes(reference),
  on: ({ session, reference: chosen }) => session !== null && inUse(session, chosen) === reference,
  run: (page) => page.change({ reference }),
});

export const references = [
  against('ends', '1', 'Ends', 'joins them'),
  against('leastSquares', '2', 'Least squares', 'best fit'),
  against('minimumZone', '3', 'Minimum zone', 'narrowest'),
];

const ended = ({ session }: PageState) => session?.ended ?? false;

export const working: Action = {
  id: 'working',
  word: ({ working }) => (working ? 'Hide the working' : 'Show the working'),
  keys: ['w'],
  hint: () => 'W',
  can: ({ session }) => session !== null && session.counted.size > 0,
  on: ({ working }) => working,
  run: (page) => page.change({ working: !page.store.get().working, lit: null }),
};

export const truth: Action = {
  id: 'truth',
  word: () => 'True shape',
  keys: ['t'],
  hint: ({ truth }) => (truth ? 'T, take it off' : 'T, lay it over'),
  can: (state) => ended(state) && state.session?.header.simulated !== undefined,
  on: ({ truth }) => truth,
  run: (page) => page.change({ truth: !page.store.get().truth }),
};

export const print: Action = {
  id: 'print',
  word: () => 'Print',
  keys: ['p'],
  hint: () => 'P',
  can: ended,
  run: () => window.print(),
};

export const goOn: Action = {
  id: 'go-on',
  word: () => 'Go on',
  keys: ['g'],
  hint: () => 'G, measure more',
  can: (state) => ended(state) && !state.replay && mayControl(state),
  run(page) {
    const id = page.store.get().session?.header.id;
    if (id) void page.send({ do: 'resume', id });
  },
};

export const leave: Action = {
  id: 'leave',
  word: ({ replay }) => (replay ? 'Close replay' : 'New survey'),
  keys: ['x'],
  hint: () => 'X',
  can: (state) => state.replay !== null || (ended(state) && mayControl(state)),
  run(page) {
    if (page.store.get().replay) page.turn(closeReplay);
    else void page.send({ do: 'leave' });
  },
};

export const resultActions = [...references, working, truth, print, goOn, leave];
