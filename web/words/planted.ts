import type { Session } from '../../shared/session/fold.ts';
import type { Planted } from '../../shared/session/planted.ts';
import { placeWords } from '../../shared/survey/plan.ts';
import type { FirstSign } from '../state/first-sign.ts';
import { say } from './say.ts';

/** What somebody may believe was wrong. */
export function plantedWord(planted: Planted): string {
  switch (planted) {
    case 'nothing':
      return say('Nothing');
    case 'chip':
      return say('A chip underneath');
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
    case 'moved':
      return say('Something moved');
    case 'inverted':
      return say('The sign inverted');
  }
}

/** What was planted, and what gives it away. */
export function plantedTold(planted: Planted): string {
  switch (planted) {
    case 'nothing':
      return say('Nothing was planted: every reading was done well. To see that is worth as much.');
    case 'chip':
      return say(
        'One reading was made with a chip under it. What was read there a second time disagrees at that place alone.',
      );
    case 'drift':
      return say(
        'The zero drifted steadily from the first reading to the last. On one walk it is a bow, on one sweep a taper; out and back together cancel it.',
      );
    case 'heat':
      return say(
        'The zero crept fast at first, then came to rest. Out and back differ most where the walk began, and do not cancel.',
      );
    case 'turned':
      return say(
        'In the middle of the first walk the level was turned end for end. From there on, that walk and another over the same steps go contrary ways.',
      );
    case 'skipped':
      return say(
        'One station was passed over, and all behind it was read one station ahead. Only reading it a second time, or counting marks, shows it.',
      );
    case 'doubled':
      return say(
        'One place was read twice, and all behind it was read one station late. Only reading it a second time, or counting marks, shows it.',
      );
    case 'moved':
      return say(
        'In the middle of the first walk or sweep something moved: the zero, the stand or the part. From there on every reading of it is off by the same amount.',
      );
    case 'inverted':
      return say(
        'The sign of the instrument was inverted throughout. No reading disagrees: only a strip of paper under one foot, or under the tip, shows it.',
      );
  }
}

/** Where it was, and when it could have been seen. */
export function plantedSeen({ header, takes }: Session, sign: FirstSign | null): readonly string[] {
  const { planted, plantedAt } = header.simulated ?? {};
  const where = plantedAt ? [say('It was at {place}.', { place: placeWords(plantedAt) })] : [];
  if (planted === 'nothing') {
    return sign ? [say('And yet, after reading {nth}, it was said: “{text}”', saidThen(sign))] : [];
  }
  return [
    ...where,
    sign
      ? say('It could be seen from reading {nth} of {all} on ({place}), when it was said: “{text}”', {
          ...saidThen(sign),
          all: takes.length,
        })
      : say('No reading of this survey shows it: nothing that was read a second time disagrees.'),
  ];
}

function saidThen({ nth, take, notice }: FirstSign) {
  return { nth, place: placeWords(take.place), text: notice.text };
}
