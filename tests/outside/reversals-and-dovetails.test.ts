import { describe, expect, test } from 'vitest';
import { pinAllowanceMm, widthFromPins } from '../../shared/figures/dovetail.ts';

// Machinery's Handbook as quoted on toolmonger: male x = D·(1 + cot(θ/2)) + a, female y = b − D·(1 + cot(θ/2)).
describe('dovetail over pins', () => {
  test.each([
    [60, 2.7320508],
    [55, 2.9209821],
    [50, 3.1445069],
    [45, 3.4142136],
  ])('1 + cot(α/2) at %d degrees', (angleDeg, factor) => {
    expect(pinAllowanceMm({ diameterMm: 1, angleDeg, form: 'male' })).toBeCloseTo(factor, 7);
  });

  test('male: 60°, 40 mm between the sharp corners, pins of 10 mm: 67.320508 over the pins', () => {
    const pins = { diameterMm: 10, angleDeg: 60, form: 'male' } as const;
    expect(40 + pinAllowanceMm(pins)).toBeCloseTo(67.320508, 6);
    expect(widthFromPins(67.320508, pins)).toBeCloseTo(40, 6);
  });

  test('male in inches: 60°, 1.0 in, pins of 0.25 in: printed 1.6830 over the pins', () => {
    const pins = { diameterMm: 0.25 * 25.4, angleDeg: 60, form: 'male' } as const;
    expect((25.4 + pinAllowanceMm(pins)) / 25.4).toBeCloseTo(1.683013, 6);
  });

  // The datum of the female side is the wide flat where flank meets flat; one of two published
  // calculators takes the narrow throat instead, so the width is named here.
  test('female: 60°, 40 mm across the wide flat, pins of 10 mm: 12.679492 between the pins', () => {
    const pins = { diameterMm: 10, angleDeg: 60, form: 'female' } as const;
    expect(40 + pinAllowanceMm(pins)).toBeCloseTo(12.679492, 6);
    expect(widthFromPins(12.679492, pins)).toBeCloseTo(40, 6);
  });

  // A third page prints W + D/sin(α/2) − D, 50.0 for the case above: another geometry, wrong for this use.
  test('the wrong formula of a third page is not ours', () => {
    const wrong = 40 + 10 / Math.sin(Math.PI / 6) - 10;
    expect(wrong).toBeCloseTo(50, 9);
    expect(40 + pinAllowanceMm({ diameterMm: 10, angleDeg: 60, form: 'male' })).not.toBeCloseTo(wrong, 0);
  });
});
