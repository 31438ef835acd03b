import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isWayscribeError } from './errors.ts';
import {
  fromInternal,
  heightUnits,
  lengthUnits,
  type Quantity,
  tiltUnits,
  toInternal,
  unitFactor,
} from './units.ts';

const all: [Quantity, string][] = [
  ...lengthUnits.map((unit): [Quantity, string] => ['length', unit]),
  ...tiltUnits.map((unit): [Quantity, string] => ['tilt', unit]),
  ...heightUnits.map((unit): [Quantity, string] => ['height', unit]),
];

describe('units', () => {
  it('convert there and back', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...all),
        fc.double({ min: -1e9, max: 1e9, noNaN: true }),
        ([q, unit], value) => {
          expect(fromInternal(q, toInternal(q, value, unit), unit)).toBeCloseTo(value, 5);
        },
      ),
    );
  });

  // 1 in = 25.4 mm by definition (international inch, 1959); the rest is arithmetic.
  it.each<[Quantity, number, string, number]>([
    ['length', 1, 'in', 25.4],
    ['length', 2, 'm', 2000],
    ['height', 0.0001, 'in', 2.54],
    ['height', 100, 'uin', 2.54],
    ['height', 0.01, 'mm', 10],
    ['tilt', 0.02, 'mm/m', 20],
    ['tilt', 0.0005, 'in/ft', 41.666_666_666_666_67],
    ['tilt', 0.0005, 'in/10in', 50],
    ['tilt', 10, 'arcsec', 48.481_368_110_953_6],
    ['tilt', 1, 'deg', 17_453.292_519_943_3],
    ['tilt', 1, 'mrad', 1000],
  ])('of %s: %d %s is %d', (quantity, value, unit, internal) => {
    expect(toInternal(quantity, value, unit) / internal).toBeCloseTo(1, 14);
  });

  it('"0.0005 in" per foot and per 10 in are a fifth apart', () => {
    expect(unitFactor('tilt', 'in/10in') / unitFactor('tilt', 'in/ft')).toBeCloseTo(1.2, 14);
  });

  it('that are none are refused by name', () => {
    for (const unit of ['furlong', 'toString', '']) {
      try {
        unitFactor('length', unit);
        expect.unreachable();
      } catch (error) {
        expect(isWayscribeError(error, 'units.unknown')).toBe(true);
      }
    }
  });
});
