/**
 * A reading that an instrument types, posing as a keyboard: characters in quick succession, and a key that ends them.
 * Nothing half counts: what has no end, or has a pause in it, is void.
 */

/** A pause longer than this within one reading, ms, says that it broke off: instruments type much faster. */
export const brokenOffMs = 250;
const longest = 40;

/** What has come of a reading so far, with the wall clock at its first and its newest key. */
export interface Burst {
  readonly text: string;
  readonly firstT: number;
  readonly lastT: number;
}

export type Outcome =
  | { readonly is: 'whole'; readonly text: string; readonly keyed: [first: number, last: number] }
  | { readonly is: 'void'; readonly text: string; readonly why: 'paused' | 'too-long' | 'other-key' };

/** What one more key does. Keys are named as `KeyboardEvent.key`; those that type nothing change nothing. */
export function key(
  burst: Burst | null,
  name: string,
  t: number,
): { readonly burst: Burst | null; readonly outcome: Outcome | null } {
  if (burst && t - burst.lastT > brokenOffMs) {
    // Whatever comes behind the pause may be the rest of it, or the next one: its own end will tell.
    return { burst: begun(name, t), outcome: { is: 'void', text: burst.text, why: 'paused' } };
  }
  if (name === 'Enter' || name === 'Tab') {
    const outcome: Outcome | null = burst && {
      is: 'whole',
      text: burst.text,
      keyed: [burst.firstT, t],
    };
    return { burst: null, outcome };
  }
  if (name.length > 1) {
    const edits = /^(Backspace|Delete|Home|End|Arrow\w+|Page\w+)$/.test(name);
    return burst && edits
      ? { burst: null, outcome: { is: 'void', text: burst.text, why: 'other-key' } }
      : { burst, outcome: null };
  }
  if (!burst) return { burst: begun(name, t), outcome: null };
  const text = burst.text + name;
  if (text.length > longest) return { burst: null, outcome: { is: 'void', text, why: 'too-long' } };
  return { burst: { ...burst, text, lastT: t }, outcome: null };
}

function begun(name: string, t: number): Burst | null {
  return name.length === 1 ? { text: name, firstT: t, lastT: t } : null;
}
