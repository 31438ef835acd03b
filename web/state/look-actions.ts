import type { Action } from './actions.ts';
import { remember } from './preferences.ts';

export const theme: Action = {
  id: 'theme',
  word: ({ theme }) => (theme === 'paper' ? 'Dark' : 'Light'),
  keys: ['d'],
  hint: () => 'D',
  can: () => true,
  run(page) {
    const theme = page.store.get().theme === 'paper' ? 'slate' : 'paper';
    page.change({ theme });
    remember({ theme });
  },
};

export const mute: Action = {
  id: 'mute',
  word: ({ muted }) => (muted ? 'Sound is off' : 'Sound is on'),
  keys: ['m'],
  hint: () => 'M',
  can: () => true,
  on: ({ muted }) => !muted,
  run(page) {
    const muted = !page.store.get().muted;
    page.change({ muted });
    remember({ muted });
  },
};

export const lookActions = [theme, mute];
