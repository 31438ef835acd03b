import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { randomReadings } from '../tests/instruments/random-readings.ts';
import { random } from '../tests/tools/random.ts';
import { type CutState, cut, cutEnd, longestGapMs, type Piece, uncut } from './cut.ts';
import { encode } from './encode.ts';
import { type Profile, profileSchema } from './profile.ts';
import { findProfile, shippedProfiles } from './shipped.ts';

type Arrival = readonly [bytes: string, ms: number];

function allCut(profile: Profile, arrivals: readonly Arrival[], end = true): Piece[] {
  let state: CutState = uncut(profile);
  const pieces: Piece[] = [];
  for (const [bytes, ms] of arrivals) {
    const step = cut(profile, state, bytes, ms);
    state = step.state;
    pieces.push(...step.pieces);
  }
  return end ? [...pieces, ...cutEnd(state)] : pieces;
}

const framesOf = (pieces: readonly Piece[]) => pieces.flatMap(({ frame }) => frame ?? []);
const bytesIn = (pieces: readonly Piece[]) => pieces.map((piece) => piece.frame ?? piece.noise).join('');

/** Breaks a text apart at places. */
function broken(text: string, places: readonly number[]): string[] {
  const at = [0, ...[...places].sort((a, b) => a - b), text.length];
  return at.slice(1).map((to, k) => text.slice(at[k], to));
}

describe.each(
  shippedProfiles
    .filter(({ frame }) => frame.ends === 'length')
    .map((profile) => [profile.id, profile] as const),
)('frames of one length: %s', (_id, profile) => {
  const numbers = random(5);
  const sent = Array.from({ length: 12 }, () => encode(profile, randomReadings(profile, numbers)));
  const stream = sent.join('');

  test('come out the same wherever the bytes are broken apart, and no byte is lost', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(stream.length + 5), { maxLength: 20 }), (places) => {
        const text = `${stream.slice(-5)}${stream}`;
        const pieces = allCut(
          profile,
          broken(text, places).map((bytes) => [bytes, 0] as const),
        );
        expect(framesOf(pieces)).toEqual(sent);
        expect(bytesIn(pieces)).toBe(text);
      }),
      { verbose: 1 },
    );
  });

  test('a byte too few or too many costs its own frame and no other', () => {
    for (let k = 0; k < stream.length; k += 1) {
      const hurt = Math.floor(k / sent[0]!.length);
      const others = sent.filter((_, place) => place !== hurt);
      const without = framesOf(allCut(profile, [[stream.slice(0, k) + stream.slice(k + 1), 0]]));
      expect(without.filter((frame) => sent.includes(frame))).toEqual(others);
      const doubled = framesOf(allCut(profile, [[stream.slice(0, k + 1) + stream.slice(k), 0]]));
      expect(doubled.filter((frame) => sent.includes(frame)).length).toBeGreaterThanOrEqual(others.length);
    }
  });

  test('halves from before and after a break never join', () => {
    const [one = '', two = ''] = sent;
    const pieces = allCut(profile, [
      [one.slice(0, 4), 0],
      [one.slice(4) + two, 5000],
    ]);
    expect(framesOf(pieces)).toEqual([two]);
  });
});

test('what is left of an answer never joins the answer to the next question', () => {
  const profile = findProfile('modbus-float');
  const numbers = random(6);
  const [one = '', two = ''] = [0, 1].map(() => encode(profile, randomReadings(profile, numbers)));
  for (let k = 1; k < one.length; k += 1) {
    const torn: Arrival[] = [
      [one.slice(0, k), 0],
      [one.slice(k) + two, 90],
    ];
    expect(framesOf(allCut(profile, torn)), `broken behind byte ${k}`).toEqual([two]);
  }
  // Bytes that an adapter hands over late are still of one answer.
  const late: Arrival[] = [
    [one.slice(0, 3), 0],
    [one.slice(3), 40],
  ];
  expect(framesOf(allCut(profile, late))).toEqual([one]);
});

test('noise is not held for ever', () => {
  const pieces = allCut(findProfile('modbus-float'), [['x'.repeat(1000), 0]], false);
  expect(pieces).toEqual([{ noise: 'x'.repeat(1000), why: 'is not the start of a frame' }]);
});

describe('frames that a pause ends', () => {
  const profile = profileSchema.parse({
    ...findProfile('line-decimal'),
    frame: { ends: 'silence', gapMs: 20, longest: 16 },
  });

  test('the first one may have begun before the port was opened', () => {
    const pieces = allCut(profile, [
      ['12.4', 0],
      ['+0012', 100],
      ['.5', 115],
      ['', 130],
      ['', 136],
      ['+0012.6', 200],
    ]);
    expect(pieces).toEqual([
      { noise: '12.4', why: 'before the first pause' },
      { frame: '+0012.5' },
      { noise: '+0012.6', why: 'cut off by the end of the line' },
    ]);
  });

  test('are the same wherever the bytes of one are broken apart', () => {
    fc.assert(
      fc.property(fc.array(fc.array(fc.nat(7), { maxLength: 4 }), { maxLength: 10 }), (breaks) => {
        const arrivals: Arrival[] = [['?', -100]];
        breaks.forEach((places, k) => {
          broken(`+0012.${k}`, places).forEach((bytes, n) => {
            if (bytes) arrivals.push([bytes, 100 * k + n]);
          });
        });
        const pieces = allCut(profile, [...arrivals, ['', 1e6]]);
        expect(framesOf(pieces)).toEqual(breaks.map((_, k) => `+0012.${k}`));
      }),
      { verbose: 1 },
    );
  });

  test('what never pauses is not held, and its rest is no frame', () => {
    const pieces = allCut(profile, [
      ['?', 0],
      ['x'.repeat(30), 100],
      ['+0012.5', 110],
      ['+0012.6', 200],
      ['', 300],
    ]);
    expect(framesOf(pieces)).toEqual(['+0012.6']);
  });
});

test.each(
  shippedProfiles
    .filter(({ talk }) => talk.kind !== 'by-button')
    .map((profile) => [profile.id, profile] as const),
)('%s: a gap within a frame ends it long before the silence of the instrument is told', (_, profile) => {
  const { talk } = profile;
  if (talk.kind === 'by-button') return;
  expect(longestGapMs(profile)).toBeLessThanOrEqual(Math.max(100, talk.everyMs));
});
