import fc from 'fast-check';
import { expect, test } from 'vitest';
import { thinLabels } from './thin-labels.ts';

function row(count: number, widthPx: number, must: number[] = []) {
  return Array.from({ length: count }, (_, k) => ({
    px: (k * widthPx) / (count - 1),
    widthPx: 8 * String(`F${k}`).length,
    must: must.includes(k),
  }));
}

test('no two labels touch, the ends and what must stand are there', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 2, max: 200 }),
      fc.integer({ min: 250, max: 1600 }),
      fc.nat(),
      (count, widthPx, seed) => {
        const must = seed % count;
        const labels = row(count, widthPx, [must]);
        const shown = [...thinLabels(labels)].sort((a, b) => a - b);
        expect(shown).toContain(must);
        for (let i = 1; i < shown.length; i++) {
          const [left, right] = [labels[shown[i - 1]!]!, labels[shown[i]!]!];
          expect(right.px - left.px).toBeGreaterThanOrEqual((left.widthPx + right.widthPx) / 2);
        }
      },
    ),
  );
});

test('with room, every station has its name; without, every fifth', () => {
  expect(thinLabels(row(13, 1100)).size).toBe(13);
  expect([...thinLabels(row(60, 600))].sort((a, b) => a - b)).toEqual([
    0, 5, 10, 15, 20, 25, 30, 35, 40, 45, 50, 55, 59,
  ]);
});
