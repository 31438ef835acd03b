import { expect } from 'vitest';

/** Every number within half a unit of the given decimal. */
export function expectClose(actual: ArrayLike<number>, expected: readonly number[], digits: number): void {
  expect(actual.length).toBe(expected.length);
  for (let k = 0; k < expected.length; k++)
    expect(actual[k]!, `entry ${k}`).toBeCloseTo(expected[k]!, digits);
}
