import type { Action } from './actions.ts';

/** A plate can be seen as a plan or as an exaggerated relief. */
export const relief: Action = {
  id: 'relief',
  word: ({ relief }) => (relief ? 'Plan' : 'Relief'),
  keys: ['v'],
  hint: () => 'V',
  can: ({ session }) => session?.setup.kind === 'plate' && session.counted.size > 2,
  on: ({ relief }) => relief,
  run: (page) => page.change({ relief: !page.store.get().relief }),
};

/** Kinds whose lines are scraped along their stations. */
const scraped: readonly string[] = ['way', 'bed', 'straightedge', 'slide'];

/** What was found can be seen as profiles or as what to scrape. */
export const passes: Action = {
  id: 'passes',
  word: ({ passes }) => (passes ? 'Show the profiles' : 'What to scrape'),
  keys: ['c'],
  hint: ({ passes }) => (passes ? 'C' : 'C, pass by pass'),
  can: ({ session }) =>
    session !== null && scraped.includes(session.setup.kind) && session.ended && session.counted.size > 2,
  on: ({ passes }) => passes,
  run: (page) => page.change({ passes: !page.store.get().passes }),
};

export const drawingActions = [relief, passes];
