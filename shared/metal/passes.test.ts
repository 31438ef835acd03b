import fc from 'fast-check';
import { expect, test } from 'vitest';
import { passesFor, planPasses } from './passes.ts';

test.each([
  [0, 5, 0],
  [0.01, 5, 1],
  [5, 5, 1],
  [5.01, 5, 2],
  [0.3, 0.1, 3],
  [0.1 + 0.2, 0.1, 3],
  [15.000000001, 5, 3],
  [15.0001, 5, 4],
])('%d µm in bites of %d: %d passes', (removal, bite, passes) => {
  expect(passesFor(removal, bite)).toBe(passes);
});

test('an exact multiple reached by sums of decimals never costs one pass more', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 400 }), fc.integer({ min: 1, max: 99 }), (n, tenths) => {
      let sum = 0;
      for (let i = 0; i < n; i++) sum += tenths / 10;
      expect(passesFor(sum, tenths / 10)).toBe(n);
    }),
  );
});

test('high ground first, widening, the last passes left out', () => {
  const names = ['a', 'b', 'c'];
  expect(planPasses(names, [1, 3, 0], 0)).toEqual([
    { pass: 1, stations: ['b'] },
    { pass: 2, stations: ['b'] },
    { pass: 3, stations: ['a', 'b'] },
  ]);
  expect(planPasses(names, [1, 3, 0], 1)).toHaveLength(2);
  expect(planPasses(names, [0, 0, 0], 0)).toEqual([]);
});

test('metal for a machine has no plan', () => {
  expect(planPasses(['a'], [1000], 0)).toHaveLength(1000);
  expect(planPasses(['a'], [1e9], 0)).toEqual([]);
});
