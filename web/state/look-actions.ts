import { languageNames, nextLanguage } from '../words/languages/languages.ts';
import { readIn } from '../words/reader.ts';
import { say } from '../words/say.ts';
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

/** The next place is said aloud by the browser's own voice. */
export const speech: Action = {
  id: 'speech',
  word: ({ speech }) => (speech ? say('Voice is on') : say('Voice is off')),
  keys: ['y'],
  hint: () => 'Y',
  can: () => true,
  on: ({ speech }) => speech,
  run(page) {
    const speech = !page.store.get().speech;
    page.change({ speech });
    remember({ speech });
  },
};

export const help: Action = {
  id: 'help',
  word: () => say('Help'),
  keys: ['?'],
  hint: () => '?',
  can: () => true,
  on: ({ help }) => help,
  run: (page) => page.change({ help: !page.store.get().help }),
};

/** The word is the language that one would have then, in its own name. */
export const language: Action = {
  id: 'language',
  word: ({ language }) => languageNames[nextLanguage(language)],
  keys: [],
  hint: () => '',
  can: () => true,
  async run(page) {
    const language = nextLanguage(page.store.get().language);
    await readIn(language);
    page.change({ language });
    remember({ language });
  },
};

export const lookActions = [theme, mute, speech, help];
