import { describe, expect, test } from 'vitest';
import { horizonSagittaUm } from '../../shared/adjust/gravity.ts';
import { sagOnTwoSupports, sagUnitUm, supportSpread, thermalBowUm } from '../../shared/figures/bending.ts';

describe('a uniform beam on two supports', () => {
  // 5/384 at the middle of a beam on its ends: every handbook of mechanics. The others computed from the
  // differential equation by an independent script.
  test.each([
    [1, 0, 5 / 384, 0.01302083],
    [1 / Math.sqrt(3), -0.0000831, 0.00051638, 0.00059948],
    [0.55938, 0.00018311, 0.00032566, 0.0003313],
    [0.553703, 0.00026974, 0.00026972, 0.00027041],
    [5 / 9, 0.00024133, 0.00028776, 0.00028948],
    [0.551566, 0.0003026, 0.00024922, 0.00030267],
    [0.5, 0.00113932, -0.00016276, 0.00130208],
  ])('supports %d apart', (spread, ends, middle, range) => {
    const sag = sagOnTwoSupports(spread);
    expect(sag.ends).toBeCloseTo(ends, 7);
    expect(sag.middle).toBeCloseTo(middle, 7);
    expect(sag.range).toBeCloseTo(range, 7);
  });

  // Ends level with the supports, and the middle level with them (computed).
  test('ends or middle level with the supports', () => {
    expect(sagOnTwoSupports(0.57165).ends).toBeCloseTo(0, 7);
    expect(sagOnTwoSupports(0.522774).middle).toBeCloseTo(0, 7);
  });

  // Wikipedia, "Airy points": a bar of 1000 mm on points 577.4 mm apart, 211.3 mm from its ends; Bessel
  // points 0.5594 of the length; the metre bar of 1020 mm rested on points 571 mm apart (Bessel).
  test('published support points', () => {
    expect(1000 * supportSpread.airy).toBeCloseTo(577.4, 1);
    expect((1000 * (1 - supportSpread.airy)) / 2).toBeCloseTo(211.3, 1);
    expect(supportSpread.bessel).toBeCloseTo(0.5594, 4);
    expect(1020 * supportSpread.bessel).toBeCloseTo(571, 0);
  });

  // Lecture slides give 0.554 of the length for the least sag of a straightedge; a scraping teacher's
  // "pivot at 30 % from both ends" is not an Airy point (21.1 %): two different statements.
  test('least sag', () => {
    expect(supportSpread.leastSag).toBeCloseTo(0.554, 3);
    const least = sagOnTwoSupports(supportSpread.leastSag).range;
    for (const other of [0.54, 0.55, 0.556, 0.5594, 0.57]) {
      expect(sagOnTwoSupports(other).range).toBeGreaterThan(least);
    }
  });

  // Computed from round values of modulus and density.
  test.each([
    ['cast iron', 1000, 100, 7200, 110, 770.2678, 10.0295, 0.4618, 0.2552, 0.2083],
    ['cast iron', 2000, 100, 7200, 110, 12324.2845, 160.4725, 7.3882, 4.083, 3.3326],
    ['steel', 1000, 50, 7850, 206, 1793.7601, 23.3563, 1.0753, 0.5943, 0.4851],
    ['granite', 1000, 150, 2900, 60, 252.7936, 3.2916, 0.1515, 0.0838, 0.0684],
  ])('%s, %d mm long, %d mm high', (_, lengthMm, heightMm, densityKgPerM3, modulusGPa, unit, ...sags) => {
    const unitUm = sagUnitUm({ lengthMm, heightMm, densityKgPerM3, modulusGPa });
    expect(unitUm).toBeCloseTo(unit, 3);
    [1, supportSpread.airy, supportSpread.bessel, supportSpread.leastSag].forEach((spread, i) => {
      expect(sagOnTwoSupports(spread).range * unitUm).toBeCloseTo(sags[i]!, 3);
    });
  });
});

// α·ΔT·L²/(8·H), computed: cast iron 10.5e-6/K, granite 6.5e-6/K.
test.each([
  [10.5e-6, 1, 1000, 200, 6.5625],
  [6.5e-6, 0.5, 1200, 200, 2.925],
])('bow of a body that is warmer on one side', (expansionPerK, differenceK, lengthMm, thicknessMm, bow) => {
  expect(thermalBowUm({ expansionPerK, differenceK, lengthMm, thicknessMm })).toBeCloseTo(bow, 9);
});

// Sagitta L²/(8R), R = 6371 km, computed. Surveying notes print the tangent offset D²/(2R), 78.5 mm at
// 1 km: four times the sagitta, not to be mixed up with it.
test.each([
  [1, 0.01962],
  [2, 0.07848],
  [3, 0.17658],
  [4, 0.31392],
  [5, 0.4905],
  [6, 0.70633],
  [10, 1.96202],
])('the horizon over %d m', (metres, sagitta) => {
  expect(horizonSagittaUm(1000 * metres)).toBeCloseTo(sagitta, 4);
});

test('tangent offset of the surveyors: 0.0785 m at 1 km', () => {
  expect((4 * horizonSagittaUm(1e6)) / 1e6).toBeCloseTo(0.0785, 4);
});
