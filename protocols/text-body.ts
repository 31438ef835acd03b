import type { ReadingState } from '../shared/session/events.ts';
import { bytesOf } from './bytes.ts';
import { findDecimal, writeDecimal } from './decimal.ts';
import type { TextPart } from './parts.ts';
import type { Says } from './profile.ts';
import { type Matched, type Slot, type Speech, spokenBy, textFor } from './slots.ts';

type TextBody = Extract<Says, { as: 'text' }>;

/**
 * Reads the parts one after the other, each as long as it can be, and never goes back: linear. Spaces between
 * parts don't matter; anything else that is not expected makes it no frame, because a wrong reading is worse
 * than a lost one.
 */
export function matchText({ parts, states }: TextBody, content: string): Matched {
  const state = Object.hasOwn(states, content) ? states[content] : undefined;
  if (state) return { slots: [{ kind: 'state', channel: undefined, state }] };
  const slots: Slot[] = [];
  let at = 0;
  for (const part of parts) {
    const found = find(part, content, at);
    if ('why' in found) {
      if (part.part !== 'number' && part.optional) continue;
      return found;
    }
    if (found.slot) slots.push(found.slot);
    at = found.end;
  }
  at = pastSpaces(content, at);
  return at === content.length ? { slots } : { why: `goes on with "${content.slice(at, at + 12)}"` };
}

/** The inverse of `matchText`: the text in which the channels say what they are to say. */
export function writeText({ parts, states }: TextBody, speech: Speech): string {
  const said = [...new Set([...speech.values()].map(({ state }) => state))];
  const common = said.length === 1 ? textFor<ReadingState>(states, said[0]!) : undefined;
  return common ?? parts.map((part) => write(part, speech)).join('');
}

type Found = { readonly end: number; readonly slot?: Slot } | { readonly why: string };

function find(part: TextPart, content: string, at: number): Found {
  if (part.part === 'fixed') {
    const text = bytesOf(part.text);
    const start = content.startsWith(text, at) ? at : pastSpaces(content, at);
    return content.startsWith(text, start)
      ? { end: start + text.length }
      : { why: `has no "${text}" at its place` };
  }
  const start = pastSpaces(content, at);
  switch (part.part) {
    case 'skip': {
      const [fewest, most] = part.length;
      let end = start;
      while (end < content.length && end - start < most && part.of.includes(content[end]!)) end += 1;
      return end - start < fewest ? { why: 'lacks what is to be skipped' } : { end };
    }
    case 'number': {
      const { channel } = part;
      const word = longestAt(part.instead, content, start);
      if (word !== undefined) {
        return { end: start + word.length, slot: { kind: 'instead', channel, state: part.instead[word]! } };
      }
      const found = findDecimal(part, content, start);
      if ('why' in found) return found;
      const { end, ...number } = found;
      return { end, slot: { kind: 'number', channel, ...number } };
    }
    case 'unit': {
      const word = longestAt(part.means, content, start);
      if (word === undefined) return { why: 'names no unit' };
      const slot: Slot = { kind: 'unit', channel: part.channel, unit: part.means[word]! };
      return { end: start + word.length, slot };
    }
    case 'state': {
      const word = longestAt(part.means, content, start);
      if (word === undefined) return { why: 'names no state' };
      const slot: Slot = { kind: 'state', channel: part.channel, state: part.means[word]! };
      return { end: start + word.length, slot };
    }
  }
}

function write(part: TextPart, speech: Speech): string {
  switch (part.part) {
    case 'fixed':
      return bytesOf(part.text);
    case 'skip':
      return part.of[0]!.repeat(part.length[0]);
    case 'number': {
      const { value, decimals, state } = spokenBy(speech, part.channel);
      return textFor<ReadingState>(part.instead, state) ?? writeDecimal(part, value, decimals);
    }
    case 'unit': {
      const { unit, named } = spokenBy(speech, part.channel);
      return part.optional && !named ? '' : (textFor(part.means, unit) ?? '');
    }
    case 'state': {
      const { state } = spokenBy(speech, part.channel);
      return part.optional && state === 'ok'
        ? ''
        : (textFor(part.means, state) ?? textFor(part.means, 'ok') ?? '');
    }
  }
}

/** The longest word of a table that stands at `at`. */
function longestAt(
  table: Readonly<Record<string, unknown>>,
  content: string,
  at: number,
): string | undefined {
  let longest: string | undefined;
  for (const word of Object.keys(table)) {
    if (word.length > (longest?.length ?? 0) && content.startsWith(word, at)) longest = word;
  }
  return longest;
}

function pastSpaces(content: string, at: number): number {
  let end = at;
  while (content[end] === ' ') end += 1;
  return end;
}
