import { say } from '../words/say.ts';
import type { Action } from './actions.ts';

/** On the computer that the daemon runs on: which devices in the network may control. */
export const devices: Action = {
  id: 'devices',
  word: () => say('Devices'),
  keys: ['i'],
  hint: () => 'I',
  can: ({ access, lan, link }) => access === 'local' && lan && link === 'open',
  run: (page) => page.change({ devices: true }),
};
