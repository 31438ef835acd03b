import { bytesOf } from '../bytes.ts';
import type { TextPart } from '../parts.ts';
import type { Profile } from '../profile.ts';
import { whole } from '../whole.ts';
import { error, type Finding } from './finding.ts';

const digits = '0123456789';

/** Whether parts that follow each other can be told apart. */
export function textFindings(profile: Profile): Finding[] {
  const { says, frame } = profile;
  if (says.as !== 'text') return [];
  const found: Finding[] = [];
  says.parts.forEach((part, k) => {
    const place = `says.parts.${k}`;
    const after = followers(says.parts.slice(k + 1)).flatMap(firstOf);
    if (part.part === 'number') {
      const [fewest, most] = part.digits;
      if (fewest > most) found.push(error(`${place}.digits`, 'the fewest come first'));
      if ((part.decimals ?? 0) > most)
        found.push(error(`${place}.decimals`, `are more than its ${most} digits`));
      if (after.some((first) => first === part.point || digits.includes(first))) {
        found.push(
          error(`${place}`, 'what follows can look like more of the number: put a fixed text between'),
        );
      }
    }
    if (part.part === 'skip') {
      if (part.length[0] > part.length[1]) found.push(error(`${place}.length`, 'the fewest come first'));
      if (after.some((first) => part.of.includes(first))) {
        found.push(error(place, 'would also skip what follows'));
      }
    }
  });
  for (const text of Object.keys(says.states)) {
    const place = `says.states.${text}`;
    if (frame.ends !== 'length' && text.length > frame.longest)
      found.push(error(place, 'is longer than a frame may be'));
    if (text.trim() !== text) found.push(error(place, 'begins or ends with a blank, which no frame keeps'));
    const { sum: _, ...unproved } = profile;
    const stateless: Profile = { ...unproved, says: { ...says, states: {} } };
    if ('slots' in whole(stateless, text)) found.push(error(place, 'is also a frame that says a number'));
  }
  return found;
}

/** The parts that may come next: those that may be missing, and the first that may not. */
function followers(rest: readonly TextPart[]): readonly TextPart[] {
  const needed = rest.findIndex((part) => part.part === 'number' || !part.optional);
  return needed < 0 ? rest : rest.slice(0, needed + 1);
}

/** Characters with which a part may begin; blanks between parts don't count. */
function firstOf(part: TextPart): string[] {
  switch (part.part) {
    case 'fixed':
      return [bytesOf(part.text)[0]!];
    case 'skip':
      return [...part.of];
    case 'number': {
      const unsigned = part.sign === 'always' ? '' : digits;
      return ['+', '-', ...unsigned, ...Object.keys(part.instead).map((word) => word[0]!)];
    }
    default:
      return Object.keys(part.means).map((word) => word[0]!);
  }
}
