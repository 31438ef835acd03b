import fc from 'fast-check';
import { expect, test } from 'vitest';
import { matchedTo } from './matched.ts';
import type { Sample } from './steadiness.ts';

const trail = (values: readonly (readonly [m: number, value: number])[]): Sample[] =>
  values.map(([m, value], k) => ({ seq: 10 + k, m, value }));

test('each time gets the value on the line between the readings around it', () => {
  const said = trail([
    [0, 0],
    [100, 10],
    [200, 10],
    [300, -20],
  ]);
  expect(matchedTo([50], said)).toEqual({ value: 5, spread: 0, readings: [10, 11] });
  expect(matchedTo([100], said)).toEqual({ value: 10, spread: 0, readings: [11, 11] });
  expect(matchedTo([50, 150, 250], said)).toMatchObject({ value: (5 + 10 - 5) / 3, readings: [10, 13] });
});

test('nothing is extrapolated', () => {
  const said = trail([
    [100, 1],
    [200, 2],
  ]);
  expect(matchedTo([99.9, 150], said)).toBeNull();
  expect(matchedTo([150, 200.1], said)).toBeNull();
  expect(matchedTo([150], [])).toBeNull();
  expect(matchedTo([100, 200], said)).not.toBeNull();
});

test('of a steady drift the mean over any times is the drift at their mean, whatever the rate of the readings', () => {
  const seed = 4;
  console.log(`seed ${seed}`);
  const steps = fc.array(fc.double({ min: 0.5, max: 400, noNaN: true }), { minLength: 2, maxLength: 60 });
  const shares = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1, maxLength: 40 });
  fc.assert(
    fc.property(steps, shares, fc.double({ min: -3, max: 3, noNaN: true }), (steps, shares, rate) => {
      const at = steps.map((_, k) => steps.slice(0, k + 1).reduce((sum, step) => sum + step, 0));
      const said = trail(at.map((m) => [m, 7 + rate * m] as const));
      const [from, to] = [said[0]!.m, said.at(-1)!.m];
      const times = shares.map((share) => Math.min(to, from + share * (to - from))).sort((a, b) => a - b);
      const mean = times.reduce((sum, at) => sum + at, 0) / times.length;
      expect(matchedTo(times, said)!.value).toBeCloseTo(7 + rate * mean, 6);
    }),
    { seed },
  );
});
