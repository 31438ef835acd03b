import fc from 'fast-check';
import { expect, test } from 'vitest';
import { exaggeration, heightLabel, heightsAxis, roundStep } from './heights-axis.ts';

const heights = fc.array(fc.double({ min: -5000, max: 5000, noNaN: true }), { maxLength: 60 });

test('the axis holds zero and every height, on its ticks, with room for words', () => {
  fc.assert(
    fc.property(
      heights,
      fc.double({ min: 0.001, max: 100, noNaN: true }),
      fc.integer({ min: 3, max: 8 }),
      fc.constantFrom('above' as const, 'below' as const),
      (values, u, lines, words) => {
        const { minUm, maxUm, stepUm, ticksUm } = heightsAxis(values, u, lines, words);
        const span = maxUm - minUm;
        for (const value of [0, ...values]) {
          expect(value).toBeGreaterThanOrEqual(minUm - 1e-9 * span);
          expect(value).toBeLessThanOrEqual(maxUm + 1e-9 * span);
        }
        const room = words === 'above' ? maxUm - Math.max(0, ...values) : Math.min(0, ...values) - minUm;
        expect(room).toBeGreaterThan(0.1 * span);
        expect(span).toBeGreaterThanOrEqual(8 * u);
        expect(ticksUm.some((tick) => Math.abs(tick) < stepUm / 1e6)).toBe(true);
        expect(ticksUm.length).toBeLessThanOrEqual(lines + 4);
      },
    ),
  );
});

test('steps are 1, 2 or 5 of a decade', () => {
  expect([0.03, 0.2, 1.1, 4.9, 5, 51].map(roundStep)).toEqual([0.05, 0.2, 2, 5, 5, 100]);
});

test('heights are told without a sign', () => {
  expect(heightLabel(10, 5)).toBe('10 high');
  expect(heightLabel(-2.5, 0.5)).toBe('2.5 low');
  expect(heightLabel(-1500, 500)).toBe('1,500 low');
  expect(heightLabel(0, 5)).toBe('0');
  expect(heightLabel(-1e-12, 0.1)).toBe('0');
});

test('the exaggeration compares px per µm with px per mm', () => {
  expect(exaggeration(4.2, 0.6046)).toBe('6,900');
  expect(exaggeration(0.001, 1)).toBe('1');
});
