import { z } from 'zod';
import { bedSize } from '../survey/bed.ts';
import { dovetailSize } from '../survey/dovetail.ts';
import { checkPlate, plateSize } from '../survey/plate.ts';
import { repeatSize } from '../survey/repeat.ts';
import { slideSize } from '../survey/slide.ts';
import { barSize, squareSize, straightedgeSize } from '../survey/turned.ts';
import { collarsSize, faceSize } from '../survey/turned-parts.ts';
import { waySize } from '../survey/way.ts';
import { heightUnits, tiltUnits } from '../units.ts';
import { conditionsShape } from './conditions.ts';

/** What is measured, with what and how: everything a session must know before its first take. */

export const readingUnitSchema = z.enum([...tiltUnits, ...heightUnits]);
export type ReadingUnit = z.infer<typeof readingUnitSchema>;

const line = z.string().trim().max(120);

export const instrumentSchema = z.object({
  name: line.min(1).describe('what the person calls the level or the indicator'),
  source: z.enum(['cable', 'typed']).describe('read from a port, or read by eye and typed'),
  keyed: z.boolean().optional().describe('it types by itself: it poses as a keyboard'),
  port: z.string().max(300).optional().describe('path of the serial port, for a cable'),
  profile: z.string().min(1).max(80).optional().describe('id of the instrument profile, for a cable'),
  channel: line.optional().describe('which of several channels on one cable'),
  serial: line.optional().describe('serial number of the instrument'),
  unit: readingUnitSchema.describe('unit of one count, or of one graduation, of the reading'),
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
export type InstrumentSetup = z.infer<typeof instrumentSchema>;

const referenceSchema = z.object({
  name: line.min(1).describe('which of the others it is'),
  faces: z
    .enum(['far', 'start', 'rear', 'front'])
    .describe('where its plus end points: along the part, or across it'),
});

const common = {
  part: line.min(1).describe('machine or part'),
  surface: line
    .min(1)
    .max(60)
    // It names the line of a way in sheet and result, and with a word behind it the runs over it.
    .regex(/^\P{Cc}*$/u, 'holds a character that cannot be written')
    .refine((name) => name !== '__proto__', 'is no name')
    .describe('the surface that is measured'),
  round: line.default('as found'),
  handsFree: z.boolean().default(true).describe('take by itself when steady after a move'),
  instrument: instrumentSchema,
  others: z
    .array(instrumentSchema)
    .max(8)
    .optional()
    .describe('more instruments on cables: each has a needle, and all they say is recorded'),
  reference: referenceSchema.optional().describe('the level among the others that stays put on the part'),
  limit: z
    .number()
    .positive()
    .max(1e6)
    .optional()
    .describe('agreed limit of the main figure, µm, or µm/m where that is a slope'),
  ...conditionsShape,
  operator: line.default(''),
  support: line.default(''),
  depthMm: z.number().positive().max(100_000).optional().describe('depth of the part from top to bottom, mm'),
  lengthUnit: z.enum(['mm', 'in']).default('mm').describe('unit in which the person reads lengths'),
};

export const setupSchema = z.discriminatedUnion('kind', [
  z.object({ ...common, ...waySize }),
  z.object({ ...common, ...bedSize }),
  z.object({ ...common, ...plateSize }).superRefine(checkPlate),
  z.object({ ...common, ...slideSize }),
  z.object({ ...common, ...straightedgeSize }),
  z.object({ ...common, ...squareSize }),
  z.object({ ...common, ...barSize }),
  z.object({ ...common, ...dovetailSize }),
  z.object({ ...common, ...repeatSize }),
  z.object({ ...common, ...collarsSize }),
  z.object({ ...common, ...faceSize }),
]);
/** A set-up with every default filled in. */
export type Setup = z.infer<typeof setupSchema>;
/** A set-up as it may be given: defaults may be left out. */
export type SetupInput = z.input<typeof setupSchema>;
export type SetupOf<K extends Setup['kind']> = Extract<Setup, { kind: K }>;
