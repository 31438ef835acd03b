import { z } from 'zod';
import { type HeightUnit, heightUnits, type TiltUnit, tiltUnits, toInternal } from '../shared/units.ts';

/** What a channel can measure. Lengths count in µm inside, slopes in µm/m, temperatures in °C. */
export const quantitySchema = z.enum(['length', 'slope', 'temperature']);
export type ReadQuantity = z.infer<typeof quantitySchema>;

export type ReadUnit = HeightUnit | TiltUnit | 'degC';

const unitsOf = {
  length: heightUnits,
  slope: tiltUnits,
  temperature: ['degC'],
} as const satisfies Record<ReadQuantity, readonly ReadUnit[]>;

export const readUnitSchema = z.enum([...heightUnits, ...tiltUnits, 'degC'] as [ReadUnit, ...ReadUnit[]]);

/** Whether things of that quantity are measured in `unit`. */
export function measures(quantity: ReadQuantity, unit: ReadUnit): boolean {
  return (unitsOf[quantity] as readonly ReadUnit[]).includes(unit);
}

/** The units of a quantity, in the order of the table. */
export function unitsFor(quantity: ReadQuantity): readonly ReadUnit[] {
  return unitsOf[quantity];
}

/**
 * `value` in `from`, as `to`; both units of the same quantity.
 * @throws WayscribeError `units.unknown` when they are not
 */
export function converted(quantity: ReadQuantity, value: number, from: ReadUnit, to: ReadUnit): number {
  if (from === to || quantity === 'temperature') return value;
  const table = quantity === 'length' ? 'height' : 'tilt';
  return toInternal(table, value, from) / toInternal(table, 1, to);
}
