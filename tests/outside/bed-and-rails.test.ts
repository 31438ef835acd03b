import { describe, expect, test } from 'vitest';
import { areaOf } from '../../shared/figures/area.ts';
import { bedFigures, crossSlopes } from '../../shared/figures/bed.ts';
import { lineOf } from '../../shared/figures/line.ts';
import { slideFigures } from '../../shared/figures/slide.ts';
import { adjustedHeights } from '../tools/adjusted-heights.ts';

// Constructed: cross-level 0.020, 0.030, 0.050 mm/m at 0, 500, 1000 mm, 300 mm between the rails.
describe('wind from cross-level readings', () => {
  const crossUmPerM = [20, 30, 50];
  const adjusted = adjustedHeights({
    names: ['F0', 'F1', 'F2', 'R0', 'R1', 'R2'],
    xMm: [0, 500, 1000, 0, 500, 1000],
    yMm: [0, 0, 0, 300, 300, 300],
    heightUm: [0, -4, 1, ...[0, -4, 1].map((h, k) => h + 0.3 * crossUmPerM[k]!)],
  });
  const lines = { front: lineOf(adjusted, [0, 1, 2]), rear: lineOf(adjusted, [3, 4, 5]) };
  const { figures, notes } = bedFigures(adjusted, lines);

  test('cross slopes are the readings, whatever shape the ways have', () => {
    crossSlopes(adjusted, lines).forEach(({ slopeUmPerM }, k) => {
      expect(slopeUmPerM).toBeCloseTo(crossUmPerM[k]!, 9);
    });
  });

  test('twist 30 µm/m over 1 m, by least squares 30 µm/m per m, 9 µm at the corner', () => {
    expect(figures.twist).toMatchObject({ unit: 'um/m' });
    expect(figures.twist!.value).toBeCloseTo(30, 9);
    expect(figures.twistRate!.value).toBeCloseTo(30, 9);
    expect(figures.wind!.value).toBeCloseTo(9, 9);
    expect(notes[0]).toBe('Wind: corner R2 stands 9 µm HIGH of the plane of the other three, sure to 4 µm.');
  });

  test('independent heights of 1 µm: uncertainties in closed form', () => {
    expect(figures.wind!.u).toBeCloseTo(2, 12);
    expect(figures.twist!.u).toBeCloseTo(2 / 0.3, 9);
    expect(figures.twistRate!.u).toBeCloseTo((Math.SQRT2 / 0.3) * Math.sqrt(2), 9);
  });
});

// An unattributed note on aligning rails: distances 800.02, 800.05, 800.08, 800.06, 800.03 mm at five stations,
// parallelism 0.06 mm.
test('rails: parallelism is the variation of their distance', () => {
  const adjusted = adjustedHeights({
    xMm: [0, 500, 1000, 1500, 2000],
    heightUm: [800_020, 800_050, 800_080, 800_060, 800_030],
  });
  const { figures } = slideFigures(adjusted, { rails: lineOf(adjusted, [0, 1, 2, 3, 4]) });
  expect(figures['rails.parallelism']!.value).toBeCloseTo(60, 6);
  expect(figures['rails.parallelism']!.u).toBeCloseTo(Math.SQRT2, 9);
});

// The same note finds the skew of a frame of 2400 × 1600 mm from its diagonals 2862 and 2858 mm as their
// difference over the sum of the sides, 0.001 rad. Right is (d1² − d2²)/(4·L·W); and diagonals that short do not
// belong to such sides.
test('skew of a frame from its diagonals', () => {
  const skew = (2862 ** 2 - 2858 ** 2) / (4 * 2400 * 1600);
  expect(skew).toBeCloseTo(0.0014896, 7);
  expect((2862 - 2858) / (2400 + 1600)).toBeCloseTo(0.001, 9);
  expect(Math.hypot(2400, 1600)).toBeCloseTo(2884.4, 1);
});

test('a survey on one line in plan has no plane', () => {
  expect(areaOf(adjustedHeights({ xMm: [0, 30, 60], yMm: [0, 40, 80], heightUm: [0, 1, 0] })).extent).toBe(
    'line',
  );
});
