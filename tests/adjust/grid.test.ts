import { describe, expect, it } from 'vitest';
import { adjust } from '../../shared/adjust/adjust.ts';
import { farCornerError, grid } from './grid.ts';

describe('a grid of height differences', () => {
  it.each([10, 30, 100])("of %d rows and columns keeps 12 digits of the far corner's variance", (n) => {
    const adjusted = adjust(grid(n));
    expect(farCornerError(adjusted, n)).toBeLessThan(1e-12);
    const { degreesOfFreedom, datumDefect } = adjusted.fit;
    expect(datumDefect).toBe(1);
    expect(degreesOfFreedom).toBe(2 * n * (n - 1) - n * n + 1);
    const sum = adjusted.redundancy.reduce((total, r) => total + r, 0);
    expect(Math.abs(sum / degreesOfFreedom - 1)).toBeLessThan(1e-12);
  });
});
