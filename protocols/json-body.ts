import type { ReadingState } from '../shared/session/events.ts';
import type { Says } from './profile.ts';
import { type Matched, type Slot, type Speech, spokenBy, textFor } from './slots.ts';

type JsonBody = Extract<Says, { as: 'json' }>;
type JsonObject = { [key: string]: unknown };

/** Reads the parts of a JSON object by their paths. Keys that no part names don't matter. */
export function matchJson({ parts }: JsonBody, content: string): Matched {
  const whole = parsed(content);
  if (typeof whole !== 'object' || whole === null) return { why: 'is no JSON object' };
  const slots: Slot[] = [];
  for (const part of parts) {
    const found = at(whole, part.path);
    const name = part.path.join('.');
    if (part.part === 'number') {
      const word = String(found);
      const { channel } = part;
      if (typeof found === 'number' && Number.isFinite(found))
        slots.push({ kind: 'number', channel, text: word });
      else if (typeof found !== 'object' && Object.hasOwn(part.instead, word)) {
        slots.push({ kind: 'instead', channel, state: part.instead[word]! });
      } else return { why: `has no number at ${name}` };
    } else if (typeof found !== 'string' || !Object.hasOwn(part.means, found)) {
      if (!part.optional || found !== undefined) return { why: `names no ${part.part} at ${name}` };
    } else if (part.part === 'unit') {
      slots.push({ kind: 'unit', channel: part.channel, unit: part.means[found]! });
    } else {
      slots.push({ kind: 'state', channel: part.channel, state: part.means[found]! });
    }
  }
  return { slots };
}

/** The inverse of `matchJson`. Lists are written as objects with the numbers of their places. */
export function writeJson({ parts }: JsonBody, speech: Speech): string {
  const whole: JsonObject = {};
  for (const part of parts) {
    const { value, decimals, unit, named, state } = spokenBy(speech, part.channel);
    if (part.part === 'number') {
      const shown = decimals === undefined ? value : Number(value.toFixed(decimals));
      put(whole, part.path, textFor<ReadingState>(part.instead, state) ?? shown);
    } else if (part.part === 'unit') {
      if (!part.optional || named) put(whole, part.path, textFor(part.means, unit));
    } else if (!part.optional || state !== 'ok') {
      put(whole, part.path, textFor(part.means, state) ?? textFor(part.means, 'ok'));
    }
  }
  return JSON.stringify(whole);
}

/** What the text says; undefined when it is no JSON. A byte that is no ASCII is no JSON to us either. */
function parsed(content: string): unknown {
  try {
    return JSON.parse(content);
  } catch {
    return undefined;
  }
}

function at(whole: unknown, path: readonly string[]): unknown {
  let inner = whole;
  for (const key of path) {
    if (typeof inner !== 'object' || inner === null || !Object.hasOwn(inner, key)) return undefined;
    inner = (inner as JsonObject)[key];
  }
  return inner;
}

function put(whole: JsonObject, path: readonly string[], value: unknown): void {
  let inner = whole;
  for (const key of path.slice(0, -1)) {
    inner[key] ??= {};
    inner = inner[key] as JsonObject;
  }
  inner[path.at(-1)!] = value;
}
