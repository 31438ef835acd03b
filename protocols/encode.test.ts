import { expect, test } from 'vitest';
import { randomReadings } from '../tests/instruments/random-readings.ts';
import { random } from '../tests/tools/random.ts';
import { decode } from './decode.ts';
import { encode, encodeFrame } from './encode.ts';
import { findProfile, shippedProfiles } from './shipped.ts';

test.each(shippedProfiles.map((profile) => [profile.id, profile] as const))(
  'what %s says is read as it was meant',
  (_id, profile) => {
    const seed = 20260;
    const numbers = random(seed);
    for (let k = 0; k < 2000; k += 1) {
      const meant = randomReadings(profile, numbers);
      const frame = encodeFrame(profile, meant);
      const decoding = decode(profile, frame);
      if ('why' in decoding) expect.fail(`seed ${seed}, ${k}: ${JSON.stringify(frame)} ${decoding.why}`);
      for (const [c, { value, unit, state }] of decoding.ok.entries()) {
        const wanted = meant[c]!;
        expect(state, frame).toBe(wanted.state);
        expect(unit, frame).toBe(wanted.unit);
        if (value === null || wanted.value === null) expect(value, frame).toBe(wanted.value);
        // A 32-bit float has 24 bits.
        else
          expect(Math.abs(value - wanted.value), frame).toBeLessThanOrEqual(
            Math.abs(wanted.value) * 2 ** -24,
          );
      }
      expect(encodeFrame(profile, decoding.ok)).toBe(frame);
    }
  },
);

test('bytes on the wire end with the delimiter', () => {
  const level = { channel: 'tilt', value: -12.4, state: 'ok', decimals: 1 } as const;
  expect(encode(findProfile('line-decimal'), [level])).toBe('-12.4\r\n');
  expect(encode(findProfile('ask-decimal'), [{ ...level, unit: 'arcsec' }])).toBe('L -12.40 arcsec\r');
});

test('what has no room is refused', () => {
  const far = { channel: 'x', value: 40, state: 'ok' } as const;
  expect(() => encode(findProfile('modbus-int16'), [far])).toThrow(/x: has no room for 40/);
});
