import { bytesOf } from './bytes.ts';
import type { Profile } from './profile.ts';
import { whole } from './whole.ts';

/** A frame that was cut out of the bytes, or bytes that belong to none. */
export type Piece =
  | { readonly frame: string; readonly noise?: undefined }
  | { readonly noise: string; readonly why: string; readonly frame?: undefined };

/** What is held between two arrivals. */
export interface CutState {
  /** Bytes that may become a frame. */
  readonly held: string;
  /** Bytes before them that belong to no frame, not yet told. */
  readonly noise: string;
  /** Why the noise is none, as its first bytes showed it. */
  readonly why: string;
  /** When the last bytes came, ms. */
  readonly lastMs: number;
  /** False while the bytes at hand may be the tail of a frame whose head nobody saw. */
  readonly trusted: boolean;
}

/** Bytes of one frame never come this far apart, ms, whatever sends them. */
export const brokenOffMs = 1000;

/** The bytes of an answer may come this far apart through an adapter that hands them over in its own time, ms. */
const adapterMs = 50;
/** What speaks by itself is given more: a computer that is busy stamps its bytes late, and a reading would be lost. */
const busyMs = 100;

/**
 * A gap longer than this within a frame says that it broke off, ms. A frame is over before the next one begins: what is
 * left of one never joins the tail of a later one, as serial-line Modbus (V1.02, 2.5.1.1) wants of a gap within a frame,
 * for which it names a time shorter than adapters keep. Where a button sends, nobody knows when the next one comes.
 */
export function longestGapMs({ talk }: Pick<Profile, 'talk'>): number {
  if (talk.kind === 'by-button') return brokenOffMs;
  const own =
    talk.kind === 'on-request' ? Math.max(adapterMs, talk.everyMs / 2) : Math.max(busyMs, 0.9 * talk.everyMs);
  return Math.min(brokenOffMs, own);
}

/** Longest stretch of noise that is held back, bytes. */
const noiseHeld = 256;

/** The state in which a port has just been opened. Only a checksum lets its first bytes be trusted. */
export function uncut(profile: Profile): CutState {
  return {
    held: '',
    noise: '',
    why: '',
    lastMs: Number.NEGATIVE_INFINITY,
    trusted: profile.sum !== undefined,
  };
}

/**
 * Cuts bytes into frames where length or silence ends them. It gives the same frames wherever the bytes are
 * broken apart; for silence, as long as no pause is made within a frame.
 *
 * By length it looks for a start and a whole frame behind it. When that is none it goes on one byte later, so that
 * a byte too many or too few costs one frame and not all that follow.
 * @param bytes none, to see whether a pause has ended a frame
 * @param ms when the bytes came, on a clock that only goes forward
 */
export function cut(
  profile: Profile,
  before: CutState,
  bytes: string,
  ms: number,
): { state: CutState; pieces: Piece[] } {
  return profile.frame.ends === 'silence'
    ? cutBySilence(profile, profile.frame, before, bytes, ms)
    : cutByLength(profile, before, bytes, ms);
}

/** The end of the line: what is held can be no frame any more. */
export function cutEnd(before: CutState): Piece[] {
  const rest = before.noise + before.held;
  return rest ? [{ noise: rest, why: before.why || 'cut off by the end of the line' }] : [];
}

function cutByLength(profile: Profile, before: CutState, bytes: string, ms: number) {
  if (profile.frame.ends !== 'length') throw new Error('a delimiter is cut elsewhere');
  const { length } = profile.frame;
  const start = profile.frame.start === undefined ? '' : bytesOf(profile.frame.start);
  const pieces: Piece[] = [];
  let { held, noise, why } = before;
  if (held && ms - before.lastMs > longestGapMs(profile)) {
    noise += held;
    why ||= 'broke off';
    held = '';
  }
  const text = held + bytes;
  let at = 0;
  let quietFrom = 0;
  const tell = () => {
    if (noise) pieces.push({ noise, why });
    noise = '';
    why = '';
  };
  while (at < text.length) {
    const next = text.indexOf(start, at);
    // Without a start in sight only its first bytes may still stand at the end.
    if (next < 0) {
      at = Math.max(at, text.length - startedAtEnd(text, start));
      break;
    }
    at = next;
    if (text.length - at < length) break;
    const frame = text.slice(at, at + length);
    const matched = whole(profile, frame);
    if ('why' in matched) {
      why ||= matched.why;
      at += 1;
      continue;
    }
    noise += text.slice(quietFrom, at);
    why ||= 'is not the start of a frame';
    tell();
    pieces.push({ frame });
    at += length;
    quietFrom = at;
  }
  noise += text.slice(quietFrom, at);
  if (noise) why ||= 'is not the start of a frame';
  if (noise.length > noiseHeld) tell();
  const state: CutState = {
    held: text.slice(at),
    noise,
    why,
    lastMs: bytes ? ms : before.lastMs,
    trusted: true,
  };
  return { state, pieces };
}

/** How many of the last bytes are the first ones of `start`. */
function startedAtEnd(text: string, start: string): number {
  for (let n = Math.min(start.length - 1, text.length); n > 0; n -= 1) {
    if (text.endsWith(start.slice(0, n))) return n;
  }
  return 0;
}

type BySilence = Extract<Profile['frame'], { ends: 'silence' }>;

function cutBySilence(profile: Profile, rule: BySilence, before: CutState, bytes: string, ms: number) {
  const pieces: Piece[] = [];
  let { held, trusted } = before;
  if (ms - before.lastMs > rule.gapMs) {
    if (held) pieces.push(trusted ? { frame: held } : { noise: held, why: untrusted(profile) });
    if (before.lastMs > Number.NEGATIVE_INFINITY) trusted = true;
    held = '';
  }
  held += bytes;
  if (held.length > rule.longest) {
    pieces.push({ noise: held, why: `no pause in ${held.length} bytes` });
    // What follows until the next pause is the rest of it.
    trusted = false;
    held = '';
  }
  const lastMs = bytes ? ms : before.lastMs;
  return { state: { held, noise: '', why: '', lastMs, trusted } satisfies CutState, pieces };
}

function untrusted(profile: Profile): string {
  return profile.sum ? 'the rest of a frame that was too long' : 'before the first pause';
}
