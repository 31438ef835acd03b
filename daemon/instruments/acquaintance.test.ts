import { expect, test } from 'vitest';
import { encode } from '../../protocols/encode.ts';
import { findProfile, shippedProfiles } from '../../protocols/shipped.ts';
import { randomReadings } from '../../tests/instruments/random-readings.ts';
import { random } from '../../tests/tools/random.ts';
import { Acquaintance } from './acquaintance.ts';

const stamp = { t: 0, m: 0 };

test.each(shippedProfiles.map((profile) => [profile.id, profile] as const))(
  'bytes of %s are understood by it, and by no other profile better',
  (id, profile) => {
    const numbers = random(3);
    const acquaintance = new Acquaintance(shippedProfiles, stamp);
    for (let k = 0; k < 50; k += 1) {
      acquaintance.push(Buffer.from(encode(profile, randomReadings(profile, numbers)), 'latin1'), stamp);
    }
    const { fits, hint } = acquaintance;
    const own = fits.find((fit) => fit.profile.id === id)!;
    expect(own.frames).toBeGreaterThanOrEqual(49);
    expect(fits[0]!.frames).toBe(own.frames);
    expect(hint).toBeNull();
  },
);

test('when nothing fits there is a hint', () => {
  const acquaintance = new Acquaintance([findProfile('line-decimal')], stamp);
  acquaintance.push(Buffer.from('A;1\r\nA;2\r\nA;3\r\n'), stamp);
  expect(acquaintance.fits).toEqual([]);
  expect(acquaintance.hint).toContain('"A;2"');
});
