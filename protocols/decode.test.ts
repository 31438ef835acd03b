import { describe, expect, test } from 'vitest';
import { decode } from './decode.ts';
import { findProfile, shippedProfiles } from './shipped.ts';

describe.each(shippedProfiles.map((profile) => [profile.id, profile] as const))(
  'profile %s',
  (_id, profile) => {
    test.each(profile.examples.map((example) => [example.frame, example] as const))(
      '%j',
      (frame, example) => {
        const decoding = decode(profile, frame);
        if (!example.whole) {
          expect(decoding).toHaveProperty('why');
          return;
        }
        expect(decoding).toEqual({
          ok: {
            value: example.value,
            state: example.state ?? 'ok',
            ...(example.unit && { unit: example.unit }),
          },
        });
      },
    );

    test('a frame that lost its head is none', () => {
      for (const { frame, whole, value } of profile.examples) {
        if (!whole || value === null) continue;
        for (let cut = frame.search(/[+-]/) + 1; cut < frame.length; cut += 1) {
          expect(decode(profile, frame.slice(cut)), frame.slice(cut)).toHaveProperty('why');
        }
      }
    });
  },
);

test('minus nought is nought', () => {
  expect(decode(findProfile('line-decimal'), '-0000.0')).toEqual({ ok: { value: 0, state: 'ok' } });
});

test('an unknown profile is named with the known ones', () => {
  expect(() => findProfile('nope')).toThrow(/nope: no such instrument profile; known are line-decimal/);
});
