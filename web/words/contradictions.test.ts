import { expect, test } from 'vitest';
import type { ProvedInstrument } from '../../shared/proving/instruments.ts';
import type { Proving } from '../../shared/proving/proving.ts';
import { type Claimed, contradictions } from './contradictions.ts';

const proving = {
  name: 'L2',
  reads: 'tilt',
  source: 'cable',
  port: '/dev/a',
  profile: 'line-decimal',
  unit: 'um/m',
  graduation: 1,
} as Proving;
const level: ProvedInstrument = { t: 0, day: '2026-03-01', sign: 1, zero: 38, sigma: 0.3, proving };
const tip: ProvedInstrument = {
  ...level,
  sign: -1,
  proving: { ...proving, name: 'I1', reads: 'height', unit: 'mm', graduation: 0.001 },
};
const agrees: Claimed = {
  source: 'cable',
  port: '/dev/a',
  profile: 'line-decimal',
  unit: 'um/m',
  graduation: 1,
  sigma: 0.3,
};
const tipAgrees: Claimed = { ...agrees, unit: 'um', graduation: 1, plus: 'low' };

test('a set-up that says what was proved is not warned of, in whatever words it says it', () => {
  expect(contradictions(agrees, level)).toEqual([]);
  expect(contradictions({ ...agrees, unit: 'mm/m', graduation: 0.001 }, level)).toEqual([]);
  expect(contradictions({ ...agrees, sigma: null, port: undefined, profile: undefined }, level)).toEqual([]);
  expect(contradictions(tipAgrees, tip)).toEqual([]);
});

test.each<[Partial<Claimed>, ProvedInstrument, string]>([
  [
    { unit: 'arcsec' },
    level,
    'One count of L2 was proved to be 1 µm/m; here it is 1 arc seconds: every height would come out 4.85 times as large.',
  ],
  [{ sigma: 0.03 }, level, 'L2 was proved to spread by 0.3 µm/m; here it is 0.03 µm/m.'],
  [
    { profile: 'json-line' },
    level,
    'L2 was proved with another way of talking (line-decimal): its readings may mean something else.',
  ],
  [{ port: '/dev/b' }, level, 'L2 was proved on another port (/dev/a): see that it is the same one.'],
  [{ source: 'typed' }, level, 'L2 was proved over a cable, and here it is read by eye.'],
  [
    { ...tipAgrees, plus: 'high' },
    tip,
    'Plus of I1 was proved to mean LOW; here it means high: hills and hollows would change places.',
  ],
])('%j is warned of', (said, proved, sentence) => {
  expect(contradictions({ ...agrees, ...said }, proved)).toEqual([sentence]);
});
