import { z } from 'zod';

/** Fields that several kinds of survey share. Lengths in mm; the axes are those of the plan. */

const name = z.string().trim().min(1).max(120);

export const lengthMm = z.number().positive().max(100_000);
export const baseMm = z.number().positive().max(10_000).describe('foot spacing of the level, mm');
export const stationCount = z.number().int().min(2).max(1000);
export const prefix = z.string().regex(/^[A-Za-z]{1,3}$/);

/** The two ends of a part, in the words of the shop. */
export const ends = {
  startEnd: name.default('headstock end'),
  farEnd: name.default('tail end'),
};

/** How a walk of a level is done. */
export const walking = {
  faces: z.enum(['far', 'start']).default('far').describe('end that the plus end of the level points to'),
  back: z
    .enum(['no', 'same', 'turned'])
    .default('same')
    .describe('walk back, and whether the level is turned'),
};

/** How a sweep of an indicator is done. */
export const sweeping = {
  plus: z.enum(['high', 'low']).default('high').describe('what a positive reading says of the metal'),
};

/** +1 or −1 for a level by the end that its plus end points to. */
export function facingOf(faces: 'far' | 'start', turned = false): 1 | -1 {
  return (faces === 'far') === turned ? -1 : 1;
}

/** +1 or −1 for an indicator by what plus says of the metal. */
export function senseOf(plus: 'high' | 'low'): 1 | -1 {
  return plus === 'high' ? 1 : -1;
}
