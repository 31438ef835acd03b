import { z } from 'zod';

/** What can be planted in a simulated survey, to be found. */
export const plantedFaults = [
  'nothing',
  'chip',
  'drift',
  'heat',
  'turned',
  'skipped',
  'doubled',
  'inverted',
] as const;
export const plantedSchema = z.enum(plantedFaults);
export type Planted = z.infer<typeof plantedSchema>;
