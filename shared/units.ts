import { WayscribeError } from './errors.ts';

/**
 * Every unit that a sheet or an instrument may speak, as the size of one of it in the internal unit:
 * lengths in mm, tilts in µm/m, heights in µm. The ratios are exact by definition (1 in = 25.4 mm).
 *
 * A tilt may be given as a slope (µm/m, mm/m, in/ft, in/10in) or as an angle (arcsec, deg, mrad). Levels
 * read small angles, so an angle in radian is taken as the slope: 1 arcsec = 4.84813681 µm/m. At 1° the
 * tangent differs from it by 1 part in 10 000.
 */
const units = {
  length: { mm: 1, m: 1000, in: 25.4 },
  tilt: {
    'um/m': 1,
    'mm/m': 1000,
    arcsec: (1e6 * Math.PI) / 648_000,
    deg: (1e6 * Math.PI) / 180,
    mrad: 1000,
    'in/ft': 1e6 / 12,
    'in/10in': 1e6 / 10,
  },
  height: { um: 1, mm: 1000, in: 25_400, uin: 254 / 10_000 },
} as const;

export type Quantity = keyof typeof units;
export type LengthUnit = keyof typeof units.length;
export type TiltUnit = keyof typeof units.tilt;
export type HeightUnit = keyof typeof units.height;

/** The names of the units of a quantity, in the order of the table. */
export const lengthUnits = Object.keys(units.length) as [LengthUnit, ...LengthUnit[]];
export const tiltUnits = Object.keys(units.tilt) as [TiltUnit, ...TiltUnit[]];
export const heightUnits = Object.keys(units.height) as [HeightUnit, ...HeightUnit[]];

/**
 * How many internal units (mm, µm/m, µm) one `unit` is.
 * @throws WayscribeError `units.unknown` when the quantity has no such unit.
 */
export function unitFactor(quantity: Quantity, unit: string): number {
  const table: Record<string, number> = units[quantity];
  const factor = Object.hasOwn(table, unit) ? table[unit] : undefined;
  if (factor !== undefined) return factor;
  throw new WayscribeError(
    'units.unknown',
    '',
    `"${unit}" is not a unit of ${quantity}`,
    `write one of ${Object.keys(table).join(', ')}`,
  );
}

/** `value` in `unit`, as internal units (mm, µm/m, µm). */
export function toInternal(quantity: Quantity, value: number, unit: string): number {
  return value * unitFactor(quantity, unit);
}

/** `value` in internal units (mm, µm/m, µm), as `unit`. */
export function fromInternal(quantity: Quantity, value: number, unit: string): number {
  return value / unitFactor(quantity, unit);
}
