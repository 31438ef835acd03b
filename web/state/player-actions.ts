import type { Action } from './actions.ts';
import { mayControl, type PageState } from './page-state.ts';

export const speeds = [1, 5, 20, 100] as const;

export const replaying = (state: PageState) => state.player !== null && mayControl(state);

export const playPause: Action = {
  id: 'play',
  word: ({ player }) => (player?.playing ? 'Pause' : 'Play'),
  keys: [' '],
  hint: () => 'space',
  can: replaying,
  run(page) {
    void page.send({ do: page.store.get().player?.playing ? 'pause' : 'play' });
  },
};

export const step: Action = {
  id: 'step',
  word: () => 'Next take',
  keys: ['arrowright'],
  hint: () => 'right arrow',
  can: replaying,
  run: (page) => void page.send({ do: 'step' }),
};

export const rewind: Action = {
  id: 'rewind',
  word: () => 'Start',
  keys: ['home'],
  hint: () => 'home',
  can: replaying,
  run: (page) => void page.send({ do: 'rewind' }),
};

export const toEnd: Action = {
  id: 'to-end',
  word: () => 'End',
  keys: ['end'],
  hint: () => 'end',
  can: replaying,
  run: (page) => void page.send({ do: 'to-end' }),
};

/** One step up or down the list of speeds. */
function change(by: 1 | -1): Action['run'] {
  return (page) => {
    const speed = page.store.get().player?.speed ?? 1;
    const at = speeds.findIndex((known) => known >= speed);
    const next = speeds[Math.min(speeds.length - 1, Math.max(0, (at < 0 ? speeds.length - 1 : at) + by))];
    if (next) void page.send({ do: 'speed', speed: next });
  };
}

export const faster: Action = {
  id: 'faster',
  word: () => 'Faster',
  keys: ['+', '='],
  hint: () => '+',
  can: replaying,
  run: change(1),
};

export const slower: Action = {
  id: 'slower',
  word: () => 'Slower',
  keys: ['-'],
  hint: () => '−',
  can: replaying,
  run: change(-1),
};

export const playerActions = [playPause, step, rewind, toEnd, faster, slower];
