import { z } from 'zod';
import { tiltUnits } from '../units.ts';

/**
 * What is measured, with what and how: everything a session must know before its first take.
 *
 * Axes: x runs along the way from its start end (drawn at the left) to its far end. Stations stand at
 * k × baseMm. `faces` says which end the plus end of the level points to: with `far` a positive reading
 * means that the far foot is higher.
 */

export const tiltUnitSchema = z.enum(tiltUnits);

const line = z.string().trim().max(120);

export const levelSchema = z.object({
  name: line.min(1).describe('what the person calls the level'),
  source: z.enum(['cable', 'typed']).describe('read from a port, or read by eye and typed'),
  port: z.string().max(300).optional().describe('path of the serial port, for a cable'),
  profile: z.string().max(80).optional().describe('id of the instrument profile, for a cable'),
  channel: z
    .string()
    .max(40)
    .optional()
    .describe(
      'which of its values is read, by the name that the profile gives it; the first slope when left out',
    ),
  serial: line.optional().describe('serial number of the instrument'),
  unit: tiltUnitSchema.describe('unit of one count, or of one graduation, of the reading'),
  graduation: z
    .number()
    .positive()
    .max(1e6)
    .default(1)
    .describe('size of one graduation in `unit`; 1 when the reading is already in `unit`'),
  sigma: z
    .number()
    .positive()
    .max(1e6)
    .optional()
    .describe('known standard deviation of one reading, as the reading is read; left out when not proved'),
  provedOn: line.optional().describe('date on which sign, unit and spread were proved'),
});
export type Level = z.infer<typeof levelSchema>;

export const setupSchema = z.object({
  kind: z.literal('way'),
  part: line.min(1).describe('machine or part'),
  surface: line.min(1).describe('the way that is walked'),
  round: line.default('as found'),
  prefix: z
    .string()
    .regex(/^[A-Za-z]{1,3}$/)
    .default('F')
    .describe('first letters of the station names'),
  lengthMm: z.number().positive().max(100_000).describe('measured length of the way, mm'),
  baseMm: z.number().positive().max(10_000).describe('foot spacing of the level, mm'),
  stations: z.number().int().min(2).max(1000).describe('number of stations, one more than the steps'),
  startEnd: line.min(1).default('headstock end'),
  farEnd: line.min(1).default('tail end'),
  faces: z.enum(['far', 'start']).default('far').describe('end that the plus end of the level points to'),
  back: z
    .enum(['no', 'same', 'turned'])
    .default('same')
    .describe('walk back, and whether the level is turned'),
  handsFree: z.boolean().default(true).describe('take by itself when steady after a move'),
  level: levelSchema,
  limitUm: z.number().positive().max(1e6).optional().describe('agreed limit of straightness, µm'),
  operator: line.default(''),
  support: line.default(''),
  partC: z.number().min(-50).max(100).optional().describe('temperature of the iron, °C'),
  airC: z.number().min(-50).max(100).optional().describe('temperature of the air, °C'),
  lengthUnit: z.enum(['mm', 'in']).default('mm').describe('unit in which the person reads lengths'),
});
/** A set-up with every default filled in. */
export type Setup = z.infer<typeof setupSchema>;
/** A set-up as it may be given: defaults may be left out. */
export type SetupInput = z.input<typeof setupSchema>;
