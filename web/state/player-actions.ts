import { say } from '../words/say.ts';
import type { Action } from './actions.ts';
import type { Page } from './page.ts';
import type { PageState } from './page-state.ts';
import { advance, askedNow, endOf, goTo, type Replay, reachOf, stepFrom } from './replay.ts';
import { replaying } from './replaying.ts';

export const speeds = [1, 5, 20, 100] as const;

const inReplay = ({ replay }: PageState) => replay !== null;
/** Nothing goes on while a question is open. */
const mayGoOn = ({ replay }: PageState) => replay !== null && askedNow(replay) === null;
const turn = (change: (replay: Replay) => Replay) => (page: Page) =>
  page.turn((state) => replaying(state, change));

export const playPause: Action = {
  id: 'play',
  word: ({ replay }) => {
    if (replay?.playing) return say('Pause');
    const { lesson = null, writing = false, moment = -1 } = replay ?? {};
    if (!lesson || writing || moment < 0) return say('Play');
    return moment < lesson.moments.length ? say('Go on') : say('Again');
  },
  keys: [' '],
  hint: () => say('space'),
  can: mayGoOn,
  run: turn((replay) => {
    if (replay.playing) return { ...replay, playing: false };
    const end = endOf(replay);
    if (replay.place < end) return advance({ ...replay, playing: true }, replay.place);
    const told = !replay.lesson || replay.writing || replay.moment >= replay.lesson.moments.length;
    return told ? { ...goTo(replay, -1), playing: true } : advance(replay, end);
  }),
};

export const step: Action = {
  id: 'step',
  word: () => say('Next'),
  keys: ['arrowright'],
  hint: () => say('a take, →'),
  can: mayGoOn,
  run: turn((replay) => advance({ ...replay, playing: false }, stepFrom(replay, 1))),
};

export const stepBack: Action = {
  id: 'step-back',
  word: () => say('Back'),
  keys: ['arrowleft'],
  hint: () => say('a take, ←'),
  can: inReplay,
  run: turn((replay) => goTo({ ...replay, playing: false }, stepFrom(replay, -1))),
};

export const rewind: Action = {
  id: 'rewind',
  word: () => say('Start'),
  keys: ['home'],
  hint: () => say('home'),
  can: inReplay,
  run: turn((replay) => goTo({ ...replay, playing: false }, -1)),
};

export const toEnd: Action = {
  id: 'to-end',
  word: () => say('End'),
  keys: ['end'],
  hint: () => say('end'),
  can: inReplay,
  run: turn((replay) => goTo({ ...replay, playing: false }, reachOf(replay))),
};

export const atSpeed = (speed: number) => turn((replay) => ({ ...replay, speed }));

/** One step up or down the list of speeds. */
function change(by: 1 | -1): Action['run'] {
  return turn((replay) => {
    const at = speeds.findIndex((known) => known >= replay.speed);
    const next = speeds[Math.min(speeds.length - 1, Math.max(0, (at < 0 ? speeds.length - 1 : at) + by))];
    return { ...replay, speed: next ?? replay.speed };
  });
}

const faster: Action = {
  id: 'faster',
  word: () => say('Faster'),
  keys: ['+', '='],
  hint: () => '+',
  can: inReplay,
  run: change(1),
};

const slower: Action = {
  id: 'slower',
  word: () => say('Slower'),
  keys: ['-'],
  hint: () => '−',
  can: inReplay,
  run: change(-1),
};

export const playerActions = [playPause, step, stepBack, rewind, toEnd, faster, slower];
