import { z } from 'zod';
import { tiltUnits } from '../units.ts';
import type { Setup } from './setup.ts';

/** What can be planted in a simulated survey, to be found. */
export const plantedFaults = [
  'nothing',
  'chip',
  'drift',
  'heat',
  'turned',
  'skipped',
  'doubled',
  'moved',
  'inverted',
] as const;
export const plantedSchema = z.enum(plantedFaults);
export type Planted = z.infer<typeof plantedSchema>;

const ofALevel: ReadonlySet<Planted> = new Set(['heat', 'turned']);

/** What can go wrong with such an instrument on such a part; a size has no sign that could be inverted. */
export function plantableIn({ kind, instrument }: Pick<Setup, 'kind' | 'instrument'>): readonly Planted[] {
  const level = (tiltUnits as readonly string[]).includes(instrument.unit);
  return plantedFaults.filter(
    (fault) =>
      (level || !ofALevel.has(fault)) &&
      (fault !== 'inverted' || (kind !== 'dovetail' && kind !== 'collars')),
  );
}
