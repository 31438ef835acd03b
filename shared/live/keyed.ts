/**
 * A reading that an instrument types, posing as a keyboard: characters in quick succession, and a key that ends them.
 * Nothing half counts: what has no end, or has a pause in it, is void, and so is everything behind it up to the next
 * end, for it may be the rest of it.
 */

/** A pause longer than this within one reading, ms, says that it broke off: instruments type much faster. */
export const brokenOffMs = 250;
const longest = 40;

/** What has come of a reading so far, with the wall clock at its first and its newest key. */
export interface Burst {
  readonly text: string;
  readonly firstT: number;
  readonly lastT: number;
  /** Whether it may be the rest of a reading that broke off. */
  readonly rest: boolean;
}

export type Outcome =
  | { readonly is: 'whole'; readonly text: string; readonly keyed: [first: number, last: number] }
  | {
      readonly is: 'void';
      readonly text: string;
      readonly why: 'paused' | 'too-long' | 'other-key' | 'rest';
    };

/** What one more key does. Keys are named as `KeyboardEvent.key`; those that type nothing change nothing. */
export function key(
  burst: Burst | null,
  name: string,
  t: number,
): { readonly burst: Burst | null; readonly outcome: Outcome | null } {
  const ends = name === 'Enter' || name === 'Tab';
  if (burst && !burst.rest && t - burst.lastT > brokenOffMs) {
    return {
      burst: ends ? null : restFrom(name, t),
      outcome: { is: 'void', text: burst.text, why: 'paused' },
    };
  }
  if (ends) return { burst: null, outcome: burst && ended(burst, t) };
  if (name.length > 1) {
    const edits = /^(Backspace|Delete|Home|End|Arrow\w+|Page\w+)$/.test(name);
    return burst && !burst.rest && edits
      ? { burst: brokenOff(t), outcome: { is: 'void', text: burst.text, why: 'other-key' } }
      : { burst, outcome: null };
  }
  if (!burst) return { burst: { text: name, firstT: t, lastT: t, rest: false }, outcome: null };
  const text = burst.text + name;
  if (text.length <= longest) return { burst: { ...burst, text, lastT: t }, outcome: null };
  return { burst: brokenOff(t), outcome: burst.rest ? null : { is: 'void', text, why: 'too-long' } };
}

/** What is held once a reading has broken off at `t`: what comes now may be the rest of it. */
export function brokenOff(t: number): Burst {
  return { text: '', firstT: t, lastT: t, rest: true };
}

function restFrom(name: string, t: number): Burst {
  return name.length === 1 ? { ...brokenOff(t), text: name } : brokenOff(t);
}

function ended({ text, firstT, rest }: Burst, t: number): Outcome | null {
  if (!rest) return { is: 'whole', text, keyed: [firstT, t] };
  return text === '' ? null : { is: 'void', text, why: 'rest' };
}
