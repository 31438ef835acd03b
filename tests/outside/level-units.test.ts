import { describe, expect, test } from 'vitest';
import { fromInternal, toInternal } from '../../shared/units.ts';

// Computed from the definitions of the units; the names as trade and makers use them. "0.0005 level" is in use
// both per 10 in (engineerfix) and per foot (scribd 318045101), 20 % apart: a unit must say which.
describe('sensitivity of levels', () => {
  test.each([
    [1, 'arcsec', 4.84813681, 1],
    [0.0005, 'in/ft', 41.6666667, 8.594367],
    [0.001, 'in/ft', 83.3333333, 17.188734],
    [0.0005, 'in/10in', 50, 10.31324],
    [0.0001, 'in/10in', 10, 2.062648],
    [0.02, 'mm/m', 20, 4.125296],
    [0.01, 'mm/m', 10, 2.062648],
    [10, 'arcsec', 48.4813681, 10],
  ])('%d %s', (value, unit, umPerM, seconds) => {
    const slope = toInternal('tilt', value, unit);
    expect(slope).toBeCloseTo(umPerM, 7);
    expect(fromInternal('tilt', slope, 'arcsec')).toBeCloseTo(seconds, 5);
  });

  test('10 arc seconds are 0.00058178 in on a foot', () => {
    expect(fromInternal('tilt', toInternal('tilt', 10, 'arcsec'), 'in/ft')).toBeCloseTo(0.00058178, 8);
  });

  // 3dportal.cn: a block level of 0.02/1000 on a base of 200 mm reads 0.004 mm a division.
  test('0.02 mm/m on 200 mm is 4 µm', () => {
    expect((toInternal('tilt', 0.02, 'mm/m') * 200) / 1000).toBeCloseTo(4, 12);
  });

  // The radius of a vial is the bubble's travel over the angle; sensitivity is given for 2 mm of travel
  // (makers' pages). sanfoundry, 2.5 mm at 10 arc seconds: 51.5 m (51.566; and it prints "BS-1958" for BS 958).
  test.each([
    [2, 20, 'arcsec', 20.6265],
    [2, 0.02, 'mm/m', 100],
    [2.5, 10, 'arcsec', 51.566],
  ])('vial, %d mm at %d %s', (travelMm, sensitivity, unit, radiusM) => {
    expect((1000 * travelMm) / toInternal('tilt', sensitivity, unit)).toBeCloseTo(radiusM, 3);
  });
});

// A page on marking ink (hackaday) turns 118 and 314 microinch into "30 µm" and "86 µm": ten times too much.
test('films of ink: 118 and 314 microinch are 3.0 and 8.0 µm', () => {
  expect(toInternal('height', 118, 'uin')).toBeCloseTo(3.0, 1);
  expect(toInternal('height', 314, 'uin')).toBeCloseTo(8.0, 1);
});
