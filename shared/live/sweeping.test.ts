import fc from 'fast-check';
import { expect, test } from 'vitest';
import { evenMoments, halfWidthMs, passedAt, sinceMoment } from './sweeping.ts';

const trailOf = (everyMs: number, untilMs: number, value: (m: number) => number) =>
  Array.from({ length: Math.floor(untilMs / everyMs) + 1 }, (_, k) => ({
    seq: k + 1,
    m: k * everyMs,
    value: value(k * everyMs),
  }));

test('on a straight slope a station reads what lies under the tip as it passes, and the motion is no scatter', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -5, max: 5, noNaN: true }),
      fc.integer({ min: 3, max: 40 }).map((k) => 100 * k),
      (perMs, m) => {
        const passed = passedAt(
          trailOf(20, 5000, (t) => 7 + perMs * t),
          m,
          240,
        );
        if (typeof passed === 'string') throw new Error(passed);
        expect(passed.value).toBeCloseTo(7 + perMs * m, 6);
        expect(passed.spread).toBeLessThan(1e-6);
        expect(passed.count).toBe(25);
      },
    ),
  );
});

test('it names the readings that it is made of', () => {
  const passed = passedAt(
    trailOf(100, 3000, () => 1),
    1000,
    250,
  );
  expect(passed).toEqual({ value: 1, spread: 0, readings: [9, 13], count: 5 });
});

test('readings that are still to come are waited for; too few are none', () => {
  const trail = trailOf(100, 1200, () => 1);
  expect(passedAt(trail, 1000, 250)).toBe('early');
  expect(passedAt([], 1000, 250)).toBe('early');
  expect(passedAt(trail, 900, 60)).toBe('thin');
});

test('an even pace passes the stations in even times; each keeps to its own share', () => {
  expect(evenMoments(1000, 4000, 4)).toEqual([1000, 2000, 3000, 4000]);
  expect(halfWidthMs(600)).toBe(60);
  expect(halfWidthMs(60_000)).toBe(halfWidthMs());
});

test('what lies too far back is let go', () => {
  expect(
    sinceMoment(
      trailOf(100, 3000, () => 1),
      2000,
    )[0]?.m,
  ).toBe(1800);
  expect(sinceMoment([], 2000)).toEqual([]);
});
