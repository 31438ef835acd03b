import type { Answer } from '../../shared/lesson/lesson.ts';
import { say } from './say.ts';

/** What can be answered at a stop point. */
export function answerWord(answer: Answer): string {
  switch (answer) {
    case 'take':
      return say('Take it');
    case 'wait':
      return say('Wait');
    case 'wipe':
      return say('Wipe and repeat');
    case 'turn':
      return say('Turn the level');
  }
}
