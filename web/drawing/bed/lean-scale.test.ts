import fc from 'fast-check';
import { expect, test } from 'vitest';
import { leanScale } from './lean-scale.ts';

const slope = fc.double({ min: -500, max: 500, noNaN: true });
const u = fc.double({ min: 0, max: 20, noNaN: true });
const lean = fc.record({ slopeUmPerM: slope, uUmPerM: u });

test('no bar leans as far as the next rung', () => {
  fc.assert(
    fc.property(fc.array(lean), fc.double({ min: 8, max: 300, noNaN: true }), (leans, rungPx) => {
      const { pxPerUmPerM } = leanScale(leans, rungPx, 1e6);
      for (const { slopeUmPerM } of leans) expect(Math.abs(slopeUmPerM) * pxPerUmPerM).toBeLessThan(rungPx);
    }),
  );
});

test('the key is a round slope, drawn on the same scale, long enough to be seen', () => {
  fc.assert(
    fc.property(fc.array(lean), fc.double({ min: 8, max: 300, noNaN: true }), (leans, rungPx) => {
      const { pxPerUmPerM, keyUmPerM, keyPx } = leanScale(leans, rungPx, 1e6);
      expect(keyPx).toBeCloseTo(keyUmPerM * pxPerUmPerM, 9);
      expect(keyPx).toBeGreaterThan(23.9);
      expect(keyPx).toBeLessThan(61);
    }),
  );
});

test('uncertainty alone does not make a bed look twisted', () => {
  const { pxPerUmPerM } = leanScale([{ slopeUmPerM: 0.5, uUmPerM: 2 }], 70, 1e6);
  expect(0.5 * pxPerUmPerM).toBeLessThan(2);
});

test('the last bar stays on the page', () => {
  const leans = [0, 20, 40].map((slopeUmPerM) => ({ slopeUmPerM, uUmPerM: 0.5 }));
  expect(40 * leanScale(leans, 90, 20).pxPerUmPerM).toBeCloseTo(2 * 20, 9);
});
