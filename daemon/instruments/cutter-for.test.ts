import { expect, test } from 'vitest';
import { encode } from '../../protocols/encode.ts';
import { shippedProfiles } from '../../protocols/shipped.ts';
import { randomReadings } from '../../tests/instruments/random-readings.ts';
import { random } from '../../tests/tools/random.ts';
import { cutterFor } from './cutter-for.ts';

const seed = 17;

test.each(
  shippedProfiles
    .filter(({ talk }) => talk.kind !== 'by-button')
    .map((profile) => [profile.id, profile] as const),
)('%s: the head of a frame and the tail of a later one never make a reading', (_, profile) => {
  const numbers = random(seed);
  const [first = '', one = '', two = '', last = ''] = Array.from({ length: 4 }, () =>
    encode(profile, randomReadings(profile, numbers)),
  );
  for (let k = 1; k < Math.min(one.length, two.length) - 1; k += 1) {
    const frames: string[] = [];
    const cutter = cutterFor(
      profile,
      { t: 0, m: 0 },
      { frame: (raw) => frames.push(raw), discarded: () => {} },
    );
    const push = (text: string, m: number) => cutter.push(Buffer.from(text, 'latin1'), { t: m, m });
    push(first + first + one.slice(0, k), 0);
    push(two.slice(k) + last + last, 950);
    cutter.end({ t: 951, m: 951 });
    const known = [first, last].map((text) => text.replace(/[\r\n]+$/, ''));
    for (const frame of frames)
      expect(known, `broken behind byte ${k}`).toContain(frame.replace(/[\r\n]+$/, ''));
  }
});
