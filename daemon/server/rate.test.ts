import { expect, test } from 'vitest';
import { Rate } from './rate.ts';

test('allows a burst, then so many a second, to each on its own', () => {
  let now = 0;
  const rate = new Rate({ perS: 10, burst: 5 }, () => now);
  const allowed = (who: string, times: number) =>
    Array.from({ length: times }, () => rate.allows(who)).filter(Boolean).length;
  expect(allowed('a', 20)).toBe(5);
  expect(allowed('b', 20)).toBe(5);
  now += 300;
  expect(allowed('a', 20)).toBe(3);
  now += 3600_000;
  expect(allowed('a', 20)).toBe(5);
});
