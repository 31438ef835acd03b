import type { ReadingState } from '../shared/session/events.ts';
import type { TiltUnit } from '../shared/units.ts';
import type { Profile } from './profile.ts';

/** What a whole frame says. `value` is null when the state is no number. */
export interface Decoded {
  readonly value: number | null;
  readonly state: ReadingState;
  /** Only when the frame itself names it. */
  readonly unit?: TiltUnit;
}

/** Either what the frame says, or why it is no frame. */
export type Decoding = { readonly ok: Decoded } | { readonly why: string };

const number = /^([+-]?) *(\d+)(?:\.(\d*))?$/;

/**
 * Reads one frame by its profile: first whether it is whole, then what it says. Pure, and linear in the
 * length of the frame. Blanks around the parts don't matter; anything else that is not expected makes it
 * no frame, because a wrong reading is worse than a lost one.
 * @param frame the bytes between two delimiters, one character a byte
 */
export function decode(profile: Profile, frame: string): Decoding {
  const { says } = profile;
  if (frame.length > profile.frame.longest) return { why: `longer than ${profile.frame.longest} bytes` };
  const text = frame.trim();
  const state = Object.hasOwn(says.states, text) ? says.states[text] : undefined;
  if (state) return { ok: { value: null, state } };
  if (!text.startsWith(says.lead)) return { why: `does not begin with "${says.lead}"` };
  const body = text.slice(says.lead.length).trim();
  const { head, unit } = splitUnit(body, says.units);
  const match = number.exec(head);
  if (!match) return { why: 'is not a signed decimal' };
  const [, sign, whole = '', fraction] = match;
  if (says.sign === 'always' && !sign) return { why: 'has no sign' };
  const digits = whole.length + (fraction?.length ?? 0);
  const [fewest, most] = says.digits;
  if (digits < fewest || digits > most) return { why: `has ${digits} digits, not ${fewest} to ${most}` };
  if (says.decimals !== undefined && (fraction?.length ?? 0) !== says.decimals) {
    return { why: `has not ${says.decimals} digits behind the point` };
  }
  if (unit === undefined && profile.unit === undefined) return { why: 'names no unit' };
  const size = Number(`${whole}.${fraction ?? ''}0`);
  const value = sign === '-' && size !== 0 ? -size : size;
  return { ok: { value, state: 'ok', ...(unit !== undefined && { unit }) } };
}

/** The unit text at the end of the frame, the longest that fits, taken off. */
function splitUnit(body: string, units: Profile['says']['units']): { head: string; unit?: TiltUnit } {
  const text = Object.keys(units)
    .filter((candidate) => body.endsWith(candidate))
    .sort((a, b) => b.length - a.length)[0];
  if (text === undefined) return { head: body };
  const unit = units[text];
  return { head: body.slice(0, body.length - text.length).trim(), ...(unit !== undefined && { unit }) };
}
