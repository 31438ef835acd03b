import type { Session } from '../../shared/session/fold.ts';
import { canSweep, type Placement, placementKey } from '../../shared/survey/plan.ts';
import { surveyNotices } from '../words/notices.ts';
import { say, text } from '../words/say.ts';
import { showsDrift } from './drift.ts';
import { takesByButton } from './needle.ts';
import { addableRun, isRepeat, runOf } from './on-plan.ts';
import type { Page } from './page.ts';
import { lastTake, mayControl, nothing, type PageState, placeNow } from './page-state.ts';
import { surveyResult } from './survey-result.ts';

/** How an action was asked for. A pedal is wired as a Page Down key. */
export type Asked = 'key' | 'button' | 'pedal';

/** One thing that can be done: its word, the keys that do it, when it can be done, and what it does. */
export interface Action {
  readonly id: string;
  word(state: PageState): string;
  /** Keys as `KeyboardEvent.key`, lower case. */
  readonly keys: readonly string[];
  hint(state: PageState): string;
  can(state: PageState): boolean;
  /** For switches: whether it is on. */
  on?(state: PageState): boolean;
  run(page: Page, asked: Asked): void;
}

const typed = (state: PageState) => state.session?.setup.instrument.source === 'typed';

/** A survey is being taken, the daemon hears, and this page may control: not ended, not a replay. */
export const surveying = (state: PageState) =>
  state.session !== null &&
  !state.session.ended &&
  !state.replay &&
  state.link !== 'lost' &&
  mayControl(state);

const openQuestion = (at: 'undo' | 'skip' | 'note' | 'finish' | 'conditions' | 'leave') => (page: Page) =>
  page.change({ pointing: { at }, refusal: null });

export const take: Action = {
  id: 'take',
  word(state) {
    if (state.session?.sweeping) return say('Mark');
    return takesByButton(state) ? say('Press its button') : say('Take');
  },
  keys: [' ', 'enter', 'pagedown'],
  hint(state) {
    if (state.session?.sweeping) return say('space · pedal');
    if (takesByButton(state)) return say('on the instrument: that takes');
    return state.session?.handsFree ? say('space · pedal · or hold still') : say('space · pedal');
  },
  can: (state) => surveying(state) && !typed(state) && !takesByButton(state) && state.session?.next !== null,
  run: (page, asked) => void page.send({ do: 'take', by: asked }),
};

/** A person may insist on a reading that is there but was refused; the take is marked so. */
export const insist: Action = {
  id: 'insist',
  word: () => 'Take anyway',
  keys: ['a'],
  hint: ({ refusal }) => (refusal?.code === 'take.unsteady' ? 'A, marked unsteady' : 'A, not moved'),
  can: (state) =>
    surveying(state) && ['take.unsteady', 'take.notReArmed'].includes(state.refusal?.code ?? ''),
  run: (page, asked) => void page.send({ do: 'take', by: asked, insist: true }),
};

export const undo: Action = {
  id: 'undo',
  word({ session }) {
    const place = session && lastTake(session)?.event.place;
    return place ? `Undo ${place.at.join('–')}` : 'Undo';
  },
  keys: ['z'],
  hint: () => 'Z, asks why',
  can: (state) => surveying(state) && state.session !== null && lastTake(state.session) !== null,
  run: openQuestion('undo'),
};

export const repeat: Action = {
  id: 'repeat',
  word: () => 'Repeat',
  keys: ['r'],
  hint: () => 'R, any place',
  can: surveying,
  run(page) {
    const { session } = page.store.get();
    const place = session && (doubted(session) ?? lastTake(session)?.event.place ?? placeNow(session));
    if (place) page.change({ pointing: { at: 'place', place }, refusal: null });
  },
};

/** The place that a warning asks to be read again. */
function doubted(session: Session): Placement | null {
  const told = surveyNotices(session, surveyResult(session, 'ends'));
  const place = told.find((notice) => notice.warns && notice.place)?.place;
  return place && session.counted.has(placementKey(place)) ? place : null;
}

export const skip: Action = {
  id: 'skip',
  word: () => 'Skip',
  keys: ['s'],
  hint: () => 'S, asks why',
  can: (state) => surveying(state) && state.session?.next !== null,
  run: openQuestion('skip'),
};

export const note: Action = {
  id: 'note',
  word: () => 'Note',
  keys: ['n'],
  hint: () => 'N',
  can: surveying,
  run: openQuestion('note'),
};

export const walkBack: Action = {
  id: 'walk-back',
  word({ session }) {
    const more = session && addableRun(session);
    if (more?.reads !== 'height') return say('Walk back');
    return isRepeat(more) ? say('Once more') : say('Sweep back');
  },
  keys: ['b'],
  hint: () => 'B, checks all',
  can: (state) => surveying(state) && state.session !== null && addableRun(state.session) !== null,
  run(page) {
    const { session } = page.store.get();
    const run = session && addableRun(session);
    if (run) void page.send({ do: 'run', run: run.id, on: true });
  },
};

export const finish: Action = {
  id: 'finish',
  word: () => 'Finish',
  keys: ['f'],
  hint: () => 'F',
  can: surveying,
  run: openQuestion('finish'),
};

export const handsFree: Action = {
  id: 'hands-free',
  word: ({ session }) => (session?.handsFree ? 'Hands-free is on' : 'Hands-free is off'),
  keys: ['h'],
  hint: ({ session }) => (session?.handsFree ? 'H, takes when still' : 'H, switch on'),
  can: (state) => surveying(state) && !typed(state) && !takesByButton(state),
  on: ({ session }) => session?.handsFree ?? false,
  run: (page) => void page.send({ do: 'hands-free', on: !page.store.get().session?.handsFree }),
};

/** The tip slides on over the run without a stop, and its places are marked: each, or the first and the last. */
const sweepOn = (by: 'marks' | 'even', key: string, words: { word: string; hint: string }): Action => ({
  id: `sweep-${by}`,
  word: ({ session }) => (session?.sweeping?.by === by ? say('Stop the sweep') : say(words.word)),
  keys: [key],
  hint: ({ session }) =>
    say('{key}, {what}', {
      key: key.toUpperCase(),
      what: session?.sweeping?.by === by ? say('read place by place') : say(words.hint),
    }),
  can: (state) => surveying(state) && !typed(state) && !takesByButton(state) && slides(state.session),
  on: ({ session }) => session?.sweeping?.by === by,
  run(page) {
    const on = page.store.get().session?.sweeping?.by === by;
    void page.send({ do: 'sweep', by: on ? 'off' : by });
  },
});

export const sweepMarks = sweepOn('marks', 'u', { word: text('Slide on'), hint: text('mark each place') });
export const sweepEven = sweepOn('even', 'j', {
  word: text('Slide evenly'),
  hint: text('mark first and last'),
});

function slides(session: Session | null): boolean {
  const run = session?.next ? runOf(session, session.next.run) : undefined;
  return run !== undefined && canSweep(run);
}

/** The level was turned end for end in the middle of a walk: from here on it faces the other way. */
export const turned: Action = {
  id: 'turned',
  word: ({ session }) =>
    session?.turnedRun && session.turnedRun === session.next?.run
      ? say('Level as before')
      : say('Level turned'),
  keys: ['e'],
  hint: () => say('E, end for end'),
  can: (state) => surveying(state) && isMidWalk(state.session),
  run: (page) => void page.send({ do: 'turned' }),
};

/** A walk of a level is on of which something was read. */
function isMidWalk(session: Session | null): boolean {
  const run = session?.next ? runOf(session, session.next.run) : undefined;
  return (
    run?.reads === 'tilt' && [...(session?.counted.values() ?? [])].some(({ place }) => place.run === run.id)
  );
}

/** A steady drift that shows is taken off by choice only. */
export const driftOff: Action = {
  id: 'drift-off',
  word: ({ session }) => (session?.driftOff ? say('Leave the drift in') : say('Take the drift off')),
  keys: ['o'],
  hint: ({ session }) => (session?.driftOff ? say('O, it is off') : say('O, where it is told from bow')),
  can: (state) =>
    surveying(state) && state.session !== null && (state.session.driftOff || showsDrift(state.session)),
  run: (page) => void page.send({ do: 'take-drift-off', off: !page.store.get().session?.driftOff }),
};

/** Closes whatever question is open. */
export const close = (page: Page) => page.change({ pointing: nothing, refusal: null });

export const surveyActions = [
  take,
  insist,
  undo,
  repeat,
  skip,
  note,
  walkBack,
  finish,
  handsFree,
  sweepMarks,
  sweepEven,
  turned,
  driftOff,
];
