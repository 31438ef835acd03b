import fc from 'fast-check';
import { expect, test } from 'vitest';
import { across } from './across.ts';

const drawing = fc.record({
  widthPx: fc.integer({ min: 280, max: 4000 }),
  coveredMm: fc.double({ min: 1, max: 100_000, noNaN: true }),
  beyond: fc.double({ min: -0.5, max: 0.9, noNaN: true }),
  gutterPx: fc.integer({ min: 40, max: 100 }),
});

test('all stations stand on the metal, and the metal is inside the drawing', () => {
  fc.assert(
    fc.property(drawing, ({ widthPx, coveredMm, beyond, gutterPx }) => {
      const axis = across(widthPx, coveredMm, coveredMm * (1 + beyond), gutterPx);
      expect(axis.leftPx).toBeGreaterThanOrEqual(gutterPx);
      expect(axis.rightPx).toBeLessThanOrEqual(widthPx);
      expect(axis.px(0)).toBeGreaterThan(axis.leftPx + 13.9);
      expect(axis.px(coveredMm)).toBeLessThan(axis.rightPx - 13.9);
    }),
  );
});

test('a way longer than its stations is drawn to scale, half of what is left over at each end', () => {
  const axis = across(1000, 1200, 1800, 60);
  expect(axis.px(0) - axis.leftPx).toBeCloseTo(300 * axis.pxPerMm, 9);
  expect(axis.rightPx - axis.px(1200)).toBeCloseTo(300 * axis.pxPerMm, 9);
  expect(axis.rightPx - axis.leftPx).toBeCloseTo(1800 * axis.pxPerMm, 9);
});
