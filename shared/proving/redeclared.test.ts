import { expect, test } from 'vitest';
import { type Proving, provingSchema } from './proving.ts';
import { redeclared } from './redeclared.ts';

const before: Proving = provingSchema.parse({
  name: 'L1',
  reads: 'tilt',
  source: 'typed',
  unit: 'arcsec',
  unitOpen: true,
  graduation: 1,
  resolution: 0.2,
  far: 'marked end',
  baseMm: 150,
  stepUm: 100,
  stepIs: 'feeler',
  takes: ['rest', 'moved', 'flat', 'on-step'].map((pose, k) => ({ pose, value: k, spread: null })),
});
const left = (more: Partial<Proving>) =>
  redeclared(before, { ...before, takes: [], ...more }).takes.map(({ pose }) => pose);

test.each<[string, Partial<Proving>, string[]]>([
  ['another unit', { unit: 'um/m' }, ['rest', 'moved', 'flat', 'on-step']],
  [
    'another name, base and graduation',
    { name: 'L2', baseMm: 152, graduation: 2 },
    ['rest', 'moved', 'flat', 'on-step'],
  ],
  ['another step', { stepUm: 200 }, ['rest', 'moved']],
  ['gauge blocks in place of a feeler', { stepIs: 'block' }, ['rest', 'moved']],
  ['the other end', { far: 'cable end' }, []],
  ['another instrument', { reads: 'height', unit: 'um' }, []],
])('of a proving with %s, what was read stays where it still holds', (_, more, kept) => {
  expect(left(more)).toEqual(kept);
});
