import { expect, test } from 'vitest';
import { shippedProfiles } from '../../protocols/shipped.ts';
import { fuzz, fuzzLine } from './fuzz-run.ts';

const seed = 1203;

test.each(shippedProfiles.map((profile) => [profile.id, profile] as const))(
  '%s: of frames with a damaged byte in a hundred none is read that is not whole',
  (id, profile) => {
    const count = fuzz(profile, 4000, seed);
    console.log(`seed ${seed}: ${fuzzLine(id, count)}`);
    expect(count.hurt).toBeGreaterThan(200);
    expect(count.notWhole).toBe(0);
    // A delimiter that is damaged takes the next frame along.
    expect(count.lost).toBeLessThanOrEqual(count.hurt);
    if (count.allowed === null) return;
    // Four standard deviations of a Poisson count.
    expect(count.wrong).toBeLessThanOrEqual(count.allowed + 4 * Math.sqrt(count.allowed));
  },
);
