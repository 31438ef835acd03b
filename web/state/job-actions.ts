import { say } from '../words/say.ts';
import type { Action } from './actions.ts';
import type { JobQuestion, JobSheet, PageState } from './page-state.ts';

/** A job lies open and nothing covers it. */
const onDesk = ({ job, session, greeted }: PageState) => greeted && job !== null && session === null;

function sheet(id: JobSheet, key: string, word: string): Action {
  return {
    id: `job-${id}`,
    word: () => say(word),
    keys: [key],
    hint: () => key.toUpperCase(),
    can: onDesk,
    on: ({ job }) => job?.sheet === id,
    run(page) {
      const { job } = page.store.get();
      if (job) page.change({ job: { ...job, sheet: id }, refusal: null });
    },
  };
}

export const jobSheets = [
  sheet('rounds', 'r', 'Rounds'),
  sheet('compare', 'b', 'Before and after'),
  sheet('plan', 's', 'What to scrape'),
  sheet('blue', 'i', 'Blue'),
  sheet('papers', 'o', 'Papers'),
];

function question(ask: JobQuestion, key: string, word: string, hint: string): Action {
  return {
    id: `job-${ask}`,
    word: () => say(word),
    keys: [key],
    hint: () => say('{key}, {hint}', { key: key.toUpperCase(), hint: say(hint) }),
    can: onDesk,
    run: (page) => page.change({ pointing: { at: 'job', ask }, refusal: null }),
  };
}

export const nextRound = question('next-round', 'n', 'Next round', 'as before');
export const logPasses = question('passes', 'l', 'Log passes', 'scraped');
export const setTarget = question('target', 't', 'Target', 'shape and bite');
export const recordPrint = question('print', 'p', 'Record a print', 'what the blue shows');
export const setSurface = question('surface', 'a', 'Surface', 'limits');
export const jobNote = question('note', 'w', 'Note', 'in the job');

export const printPlan: Action = {
  id: 'job-print-plan',
  word: () => say('Print'),
  keys: ['k'],
  hint: () => say('{key}, {hint}', { key: 'K', hint: say('for the bench') }),
  can: (state) => onDesk(state) && state.job?.sheet === 'plan',
  run: () => window.print(),
};

export const closeJob: Action = {
  id: 'job-close',
  word: () => say('Close job'),
  keys: ['x', 'escape'],
  hint: () => 'X',
  can: onDesk,
  run: (page) => page.change({ job: null, refusal: null }),
};

export const jobActions = [
  ...jobSheets,
  nextRound,
  logPasses,
  setTarget,
  recordPrint,
  setSurface,
  jobNote,
  printPlan,
  closeJob,
];
