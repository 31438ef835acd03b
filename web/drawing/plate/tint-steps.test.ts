import fc from 'fast-check';
import { expect, test } from 'vitest';
import { edgesUm, inkOf, stepOf, tintSteps } from './tint-steps.ts';

const heights = fc.array(fc.double({ min: -80, max: 80, noNaN: true }), { minLength: 1, maxLength: 40 });
const u = fc.double({ min: 0, max: 5, noNaN: true });

test('few enough to count, none finer than what is known, all heights held', () => {
  fc.assert(
    fc.property(heights, u, (h, uUm) => {
      const steps = tintSteps(h, uUm);
      expect(steps.count).toBeGreaterThanOrEqual(1);
      expect(steps.count).toBeLessThanOrEqual(8);
      expect(steps.stepUm).toBeGreaterThanOrEqual(uUm * (1 - 1e-9));
      expect(Math.min(...h)).toBeGreaterThanOrEqual(steps.fromUm - 1e-6);
      if (steps.count > 1) {
        expect(Math.max(...h)).toBeLessThanOrEqual(steps.fromUm + steps.count * steps.stepUm + 1e-6);
      }
    }),
  );
});

test('heights that differ by next to nothing are one step', () => {
  expect(tintSteps([0, -5e-324], 0)).toMatchObject({ count: 1, fromUm: -5e-324 });
});

test('what is lowest stays bare and more height never takes less ink', () => {
  fc.assert(
    fc.property(heights, u, (h, uUm) => {
      const steps = tintSteps(h, uUm);
      const inks = h.toSorted((a, b) => a - b).map((um) => inkOf(steps, stepOf(steps, um)));
      expect(inks[0]).toBe(0);
      expect(inks).toEqual(inks.toSorted((a, b) => a - b));
    }),
  );
});

test('contours run between the steps', () => {
  const steps = tintSteps([-2.9, 3.4], 0.1);
  expect(steps).toEqual({ fromUm: -3, stepUm: 1, count: 7 });
  expect(edgesUm(steps)).toEqual([-2, -1, 0, 1, 2, 3]);
});
