import type { Planted } from '../../shared/session/planted.ts';
import { say } from './say.ts';

/** What somebody may believe was wrong. */
export function plantedWord(planted: Planted): string {
  switch (planted) {
    case 'nothing':
      return say('Nothing');
    case 'chip':
      return say('A chip under a foot');
    case 'drift':
      return say('A steady drift');
    case 'heat':
      return say('A warm hand');
    case 'turned':
      return say('Turned in mid-walk');
    case 'skipped':
      return say('A station skipped');
    case 'doubled':
      return say('A station doubled');
    case 'inverted':
      return say('The sign inverted');
  }
}

/** What was planted, and how it could have been found. */
export function plantedTold(planted: Planted): string {
  switch (planted) {
    case 'nothing':
      return say('Nothing was planted: every reading was done well. To see that is worth as much.');
    case 'chip':
      return say(
        'One step of the way out was read with a chip under a foot. The walk back disagrees at that step alone.',
      );
    case 'drift':
      return say('The zero drifted steadily. On one walk it is a bow; out and back together cancel it.');
    case 'heat':
      return say(
        'The zero crept fast at first, then came to rest. Out and back differ most where the walk began, and do not cancel.',
      );
    case 'turned':
      return say(
        'In the middle of the way out the level was turned end for end. From there on, out and back go contrary ways.',
      );
    case 'skipped':
      return say(
        'On the way out one station was passed over, and all behind was read one step ahead. Only the walk back, or counting marks, shows it.',
      );
    case 'doubled':
      return say(
        'On the way out one place was read twice, and all behind was read one step late. Only the walk back, or counting marks, shows it.',
      );
    case 'inverted':
      return say(
        'The sign of the level was inverted throughout. No reading disagrees: only a strip of paper under the far foot shows it.',
      );
  }
}
