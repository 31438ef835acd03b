import { describe, expect, test } from 'vitest';
import { emptyWindow, observe, type SteadyLimits, type Window } from './steadiness.ts';

const limits: SteadyLimits = { windowMs: 1000, fewest: 6, spread: 0.8, trend: 1.2, movingFactor: 12 };

function run(
  values: (k: number) => number,
  count: number,
  everyMs = 100,
  window: Window = emptyWindow,
  m0 = 0,
) {
  let now = window;
  for (let k = 0; k < count; k += 1)
    now = observe(now, { seq: k + 1, m: m0 + k * everyMs, value: values(k) }, limits);
  return now;
}

describe('steadiness', () => {
  test('a quiet reading is steady only after a whole window', () => {
    expect(run(() => 5, 9).steadiness).toBe('settling');
    const quiet = run(() => 5, 10);
    expect(quiet.steadiness).toBe('steady');
    expect(quiet.mean).toBe(5);
    expect(quiet.spread).toBe(0);
    expect(quiet.steadySince).toBe(900);
  });

  test('a slow creep is not steady although its spread is small', () => {
    const creep = run((k) => 0.2 * k, 30);
    expect(creep.spread).toBeLessThan(limits.spread);
    expect(creep.trend).toBeCloseTo(2, 9);
    expect(creep.steadiness).toBe('settling');
  });

  test('a swing is moving', () => {
    expect(run((k) => 100 * Math.sin(k), 12).steadiness).toBe('moving');
  });

  test('a decaying swing goes from moving over settling to steady, and the window forgets the swing', () => {
    const seen: string[] = [];
    let window = emptyWindow;
    for (let k = 0; k < 60; k += 1) {
      const value = 12 + 80 * Math.exp(-k / 4) * Math.cos(k);
      window = observe(window, { seq: k, m: k * 100, value }, limits);
      if (seen.at(-1) !== window.steadiness) seen.push(window.steadiness);
    }
    expect(seen).toEqual(['settling', 'moving', 'settling', 'steady']);
    expect(window.mean).toBeCloseTo(12, 2);
  });

  test('a hole in the stream empties the window', () => {
    const before = run(() => 5, 20);
    const after = observe(before, { seq: 21, m: 20_000, value: 5 }, limits);
    expect(after.samples).toHaveLength(1);
    expect(after.steadiness).toBe('settling');
    expect(after.steadySince).toBeNull();
  });

  test('the window never grows with the length of the stream', () => {
    expect(run(() => 5, 5000).samples.length).toBeLessThanOrEqual(11);
  });
});
