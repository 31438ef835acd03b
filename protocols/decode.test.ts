import { describe, expect, test } from 'vitest';
import { bytesOf } from './bytes.ts';
import { decode } from './decode.ts';
import { findProfile, shippedProfiles } from './shipped.ts';

describe.each(shippedProfiles.map((profile) => [profile.id, profile] as const))(
  'profile %s',
  (_id, profile) => {
    test.each(profile.examples.map((example) => [example.frame, example] as const))(
      '%j',
      (frame, { reads }) => {
        const decoding = decode(profile, bytesOf(frame));
        if (!reads) {
          expect(decoding).toHaveProperty('why');
          return;
        }
        const readings = profile.channels.map(({ name }) => ({ channel: name, ...reads[name] }));
        expect(decoding).toEqual({ ok: readings });
      },
    );

    test('a frame that lost its head is none, or says the same', () => {
      // Columns without signs can lose digits of their first one unseen: no first frame of theirs is trusted.
      if (profile.id.startsWith('columns')) return;
      for (const { frame, reads } of profile.examples) {
        if (!reads) continue;
        const bytes = bytesOf(frame);
        for (let cut = 1; cut < bytes.length; cut += 1) {
          const decoding = decode(profile, bytes.slice(cut));
          if ('ok' in decoding) expect(decoding, bytes.slice(cut)).toEqual(decode(profile, bytes));
        }
      }
    });
  },
);

test('minus nought is nought', () => {
  expect(decode(findProfile('line-decimal'), '-0000.0')).toEqual({
    ok: [{ channel: 'tilt', value: 0, state: 'ok', decimals: 1 }],
  });
});

test('an unknown profile is named with the known ones', () => {
  expect(() => findProfile('nope')).toThrow(/nope: no such instrument profile; known are line-decimal/);
});
