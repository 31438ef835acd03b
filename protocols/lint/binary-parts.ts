import { nibblePlaces, nibblesOf } from '../binary-body.ts';
import type { BinaryPart } from '../parts.ts';
import type { Profile } from '../profile.ts';
import { error, type Finding } from './finding.ts';

/** Most half bytes of a whole number that a reading can hold without rounding: 52 bits. */
const exactNibbles = 13;

/** Whether every part has a place of its own, and room in it for what it says. */
export function binaryFindings({ says }: Profile): Finding[] {
  if (says.as !== 'bytes' && says.as !== 'hex') return [];
  const found: Finding[] = [];
  const taken = new Map<number, number>();
  says.parts.forEach((part, k) => {
    const place = `says.parts.${k}`;
    for (const nibble of nibblePlaces(part)) {
      if (nibble >= nibblesOf(says))
        found.push(error(`${place}.at`, `lies outside the ${says.size} of says.size`));
      const other = taken.get(nibble);
      if (other !== undefined) found.push(error(`${place}.at`, `takes a place that says.parts.${other} has`));
      taken.set(nibble, k);
    }
    found.push(...widthFindings(part, place));
    if (part.part !== 'number') return;
    const partners = says.parts.filter((other) => 'channel' in other && other.channel === part.channel);
    const point = partners.some((other) => other.part === 'decimals');
    if (point && part.decimals !== undefined) {
      found.push(error(`${place}.decimals`, 'are also told by a part of their own'));
    }
    if (part.is === 'float' && (point || part.decimals !== undefined)) {
      found.push(error(place, 'a float has its point in itself'));
    }
    if ((part.is === 'float' || part.is === 'int') && partners.some((other) => other.part === 'sign')) {
      found.push(error(place, `the sign of a number that is "${part.is}" stands in itself`));
    }
  });
  return found;
}

function widthFindings(part: BinaryPart, place: string): Finding[] {
  const width = nibblePlaces(part).length;
  const wrong = (texts: readonly string[]) =>
    texts.filter((text) => !/^[0-9a-f]+$/.test(text) || text.length !== width);
  const hexFindings = (at: string, texts: readonly string[]) =>
    wrong(texts).map((text) => error(`${place}.${at}`, `"${text}" is not ${width} lower-case hex digits`));
  switch (part.part) {
    case 'fixed':
      return hexFindings('hex', [part.hex.toLowerCase()]);
    case 'sign':
      return [...hexFindings('plus', [part.plus]), ...hexFindings('minus', [part.minus])];
    case 'unit':
    case 'state':
      return hexFindings('means', Object.keys(part.means));
    case 'decimals':
      return [];
    case 'number': {
      const found = hexFindings('instead', Object.keys(part.instead));
      if (part.is === 'float' && width !== 8 && width !== 16)
        found.push(error(`${place}.at`, 'a float has 4 or 8 bytes'));
      if (part.is !== 'float' && width > exactNibbles) {
        found.push(error(`${place}.at`, `more than ${exactNibbles} half bytes would be rounded`));
      }
      return found;
    }
  }
}
