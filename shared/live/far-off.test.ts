import fc from 'fast-check';
import { expect, test } from 'vitest';
import { farOff } from './far-off.ts';

const graduations = [1, 1.5, -0.5, 2];

test.each([
  ['the point is a place off', 15, 'point', 1.5],
  ['the point is missing', 150, 'point', 1.5],
  ['inches for millimetres', 2.6504, 'unit', 67.32],
  ['millimetres for inches', 67.31, 'unit', 2.65],
] as const)('%s', (_, typed, of, meant) => {
  const before = of === 'point' ? graduations : typed < 10 ? [67.31, 67.32, 67.33] : [2.65, 2.6502, 2.6498];
  const found = farOff(typed, before, of === 'point' ? 0.6 : 0.0006);
  expect(found?.slip?.of).toBe(of);
  expect(found?.slip?.meant).toBeCloseTo(meant, 2);
});

test('a lost sign, where all readings lie on one side', () => {
  expect(farOff(13, [-12, -13, -14.5], 0.6)?.slip).toEqual({ of: 'sign', meant: -13 });
});

test('so far that no slip is needed', () => {
  expect(farOff(5000, graduations, 0.6)).toEqual({ range: [-0.5, 2], slip: null });
});

test('a step that metal can make is not asked back, nor is anything while too little was read', () => {
  expect(farOff(7, graduations, 0.6)).toBeNull();
  expect(farOff(150, [1, 2], 0.6)).toBeNull();
});

test('numbers among those read before are never asked back', () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: 3, maxLength: 30 }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (before, share) => {
        const value = Math.min(...before) + share * (Math.max(...before) - Math.min(...before));
        expect(farOff(value, before, 1e-9)).toBeNull();
      },
    ),
  );
});
