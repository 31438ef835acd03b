import { describe, expect, it } from 'vitest';
import { chiSquareOk, chiSquareProbability } from './chi-square.ts';

describe('the χ² distribution', () => {
  it.each([0.01, 0.5, 2, 5.9, 12, 60])('with 2 degrees of freedom is 1 − exp(−x/2) at %d', (x) => {
    expect(chiSquareProbability(x, 2)).toBeCloseTo(1 - Math.exp(-x / 2), 12);
  });

  it.each([0.1, 3, 9.4, 30])('with 4 degrees of freedom is 1 − (1 + x/2)·exp(−x/2) at %d', (x) => {
    expect(chiSquareProbability(x, 4)).toBeCloseTo(1 - (1 + x / 2) * Math.exp(-x / 2), 12);
  });

  // 95 % points as every table of the distribution prints them; from memory, unchecked.
  it.each([
    [1, 3.841],
    [2, 5.991],
    [3, 7.815],
    [4, 9.488],
    [8, 15.507],
    [10, 18.307],
    [30, 43.773],
    [100, 124.342],
  ])('with %d degrees of freedom has its 95 %% point at %d', (freedom, point) => {
    expect(chiSquareOk(point - 0.001, freedom)).toBe(true);
    expect(chiSquareOk(point + 0.001, freedom)).toBe(false);
  });

  it('tends to the normal distribution', () => {
    // Wilson and Hilferty 1931: χ²/f is near (1 − 2/(9f) + z·√(2/(9f)))³, here within 1e-5 of it.
    const freedom = 100_000;
    const point = freedom * (1 - 2 / (9 * freedom) + 1.6448536 * Math.sqrt(2 / (9 * freedom))) ** 3;
    expect(chiSquareProbability(point, freedom)).toBeCloseTo(0.95, 5);
  });

  it.each([0, -1])('is 0 at %d', (x) => {
    expect(chiSquareProbability(x, 3)).toBe(0);
  });
});
