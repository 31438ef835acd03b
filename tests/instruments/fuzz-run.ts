import { cutterFor } from '../../daemon/instruments/cutter-for.ts';
import { type ChannelReading, decode } from '../../protocols/decode.ts';
import { encode, encodeFrame } from '../../protocols/encode.ts';
import type { Profile } from '../../protocols/profile.ts';
import { sumWidth } from '../../protocols/sums.ts';
import { type Random, random } from '../tools/random.ts';
import { randomReadings } from './random-readings.ts';

/** One byte in a hundred is damaged. */
const damaged = 0.01;
/** How far behind the last frame that was recognised the next one is looked for. */
const lookAhead = 40;

export interface FuzzCount {
  readonly frames: number;
  /** Frames of which at least one byte was changed, dropped or doubled. */
  readonly hurt: number;
  /** Readings that nobody sent. */
  readonly wrong: number;
  /** How many wrong ones the width of the checksum lets through, if damage were even over all sums; null without one. */
  readonly allowed: number | null;
  /** Whole frames that came to nothing although no byte of them was damaged. */
  readonly lost: number;
  /** Accepted frames that the profile itself would not write. */
  readonly notWhole: number;
}

/** Sends frames with random damage through cutter and decoder, and compares what is read with what was meant. */
export function fuzz(profile: Profile, frames: number, seed: number): FuzzCount {
  const numbers = random(seed);
  const sent: { readings: string; hurt: boolean; read: boolean }[] = [];
  let [next, wrong, notWhole] = [0, 0, 0];
  const stamp = { t: 0, m: 0 };
  const cutter = cutterFor(profile, stamp, {
    discarded: () => {},
    frame: (raw) => {
      const decoding = decode(profile, raw);
      if ('why' in decoding) return;
      const readings = JSON.stringify(decoding.ok);
      const ahead = sent.slice(next, next + lookAhead).findIndex((one) => one.readings === readings);
      if (ahead >= 0) {
        sent[next + ahead]!.read = true;
        next += ahead + 1;
        return;
      }
      wrong += 1;
      if (!isWhole(profile, decoding.ok)) notWhole += 1;
    },
  });
  const { talk } = profile;
  // An answer comes alone, behind its own question; what comes by itself may have waited and come in one burst.
  const [together, apartMs] = talk.kind === 'on-request' ? [0, talk.everyMs] : [500, 0];
  let ms = 0;
  const push = (some: string, most: number) => {
    ms += apartMs;
    for (let at = 0; at < some.length; at += most) {
      cutter.push(Buffer.from(some.slice(at, at + most), 'latin1'), { t: ms, m: ms });
    }
  };
  // The first frame after opening is trusted only when it proves itself whole.
  let bytes = profile.frame.ends === 'delimiter' && !profile.sum ? encode(profile, []) : '';
  for (let k = 0; k < frames; k += 1) {
    const frame = encode(profile, randomReadings(profile, numbers));
    const after = damage(frame, numbers);
    sent.push({ readings: meant(profile, frame), hurt: after !== frame, read: false });
    bytes += after;
    if (bytes.length > together) {
      push(bytes, 1 + numbers.below(60));
      bytes = '';
    }
  }
  push(bytes, bytes.length || 1);
  const hurt = sent.filter((one) => one.hurt).length;
  const lost = sent.filter((one) => !one.hurt && !one.read).length;
  const allowed = profile.sum ? hurt / 256 ** sumWidth[profile.sum.kind] : null;
  return { frames, hurt, wrong, allowed, lost, notWhole };
}

/** What came out, for people. */
export function fuzzLine(id: string, { frames, hurt, wrong, allowed, lost }: FuzzCount): string {
  const bound = allowed === null ? 'no checksum' : `expected at most ${allowed.toFixed(2)}`;
  const rate = ((100 * wrong) / hurt).toFixed(2);
  return (
    `${id.padEnd(20)} ${frames} frames, ${hurt} damaged: ${wrong} wrong readings (${bound}; ` +
    `${rate} % of the damaged), ${lost} whole frames lost beside damaged ones`
  );
}

/** What a reading that a frame says is compared by. */
function meant(profile: Profile, frame: string): string {
  const delimiter =
    profile.frame.ends === 'delimiter' ? encode(profile, []).length - encodeFrame(profile, []).length : 0;
  const decoding = decode(profile, frame.slice(0, frame.length - delimiter));
  if ('why' in decoding) throw new Error(`${JSON.stringify(frame)} ${decoding.why}`);
  return JSON.stringify(decoding.ok);
}

/** Whether the profile can say these readings, and understands them when it does. */
function isWhole(profile: Profile, readings: readonly ChannelReading[]): boolean {
  const again = decode(profile, encodeFrame(profile, readings));
  return 'ok' in again && JSON.stringify(again.ok.map(shown)) === JSON.stringify(readings.map(shown));
}

function shown({ channel, value, unit, state }: ChannelReading) {
  return { channel, value: value === null ? null : value.toPrecision(6), unit, state };
}

function damage(frame: string, numbers: Random): string {
  let out = '';
  for (const byte of frame) {
    if (numbers.next() >= damaged) {
      out += byte;
      continue;
    }
    const kind = numbers.below(3);
    if (kind === 0) out += String.fromCharCode(byte.charCodeAt(0) ^ (1 + numbers.below(255)));
    if (kind === 1) out += byte + byte;
  }
  return out;
}
