import { z } from 'zod';
import { heightUnits, lengthUnits, tiltUnits } from '../units.ts';

/**
 * The survey sheet, version 1: everything that a reduction needs and nothing that it does not.
 *
 * Axes: x runs along, y across. A positive tilt says that the second named station is the higher one;
 * a positive height says that the metal stands proud.
 */

export const kinds = [
  'way',
  'bed',
  'plate',
  'slide',
  'square',
  'bar',
  'dovetail',
  'repeat',
  'collars',
  'face',
  'network',
] as const;
export const references = ['ends', 'leastSquares', 'minimumZone'] as const;

const text = z.string().max(2000);
const sign = z.literal([1, -1]);
const id = z
  .string()
  .min(1)
  .max(80)
  .regex(/^\P{Cc}*$/u);
const stationName = id.describe('name of a station');
const reading = z.number().nullable().describe('what the instrument showed; null when it was skipped');
const sigma = z
  .number()
  .positive()
  .optional()
  .describe(
    'known standard deviation of one reading, in the unit of the reading; left out, 1 unit is assumed',
  );

const unitsSchema = z.strictObject({
  length: z.enum(lengthUnits).default('mm').describe('unit of station coordinates and of lengths'),
  tilt: z.enum(tiltUnits).default('um/m').describe('unit of the readings of walks'),
  height: z.enum(heightUnits).default('um').describe('unit of the readings of sweeps'),
});

const walkSchema = z.strictObject({
  id: id.describe('name of the walk, its own among walks and sweeps'),
  zero: id
    .default('free')
    .describe('"free": unknown, of this walk alone; "known": taken off already; other word: shared by name'),
  facing: sign.default(1).describe('-1 when the level stood turned end for end'),
  drift: z.boolean().default(false).describe('whether the zero may drift steadily, first reading to last'),
  sigma,
  readings: z
    .array(z.tuple([stationName, stationName, reading]))
    .describe('[from, to, reading] in the order taken; plus: "to" stands higher'),
});

const sweepSchema = z.strictObject({
  id: id.describe('name of the sweep, its own among walks and sweeps'),
  offset: z.enum(['free', 'known']).default('free').describe('whether the height of the set-up is unknown'),
  slope: z
    .enum(['free', 'known'])
    .default('free')
    .describe('"free" when the reference was set up by eye, "known" when it is the motion of the slide'),
  sense: sign.default(1).describe('-1 when metal nearer to the tip reads minus'),
  sigma,
  artefact: id.optional().describe('straightedge, square or bar whose own error is to be separated'),
  turned: z.boolean().default(false).describe('whether the artefact was turned over for this sweep'),
  readings: z
    .array(z.tuple([stationName, reading]))
    .describe('[station, reading] in the order taken; the free slope runs from the first station'),
});

const limitSchema = z.strictObject({
  figure: z.string().min(1).describe('the figure that is limited, as "front.straightness" or "twist"'),
  reference: z.enum(references).optional().describe('reference of the figure; the one in use if left out'),
  max: z.number().nonnegative().describe('largest allowed value, in the unit of the figure (µm or µm/m)'),
});

const targetSchema = z.strictObject({
  shape: z.enum(['flat', 'crown', 'hollow']).default('flat').describe('wished shape of the surface'),
  crownUm: z.number().nonnegative().default(0).describe('height or depth of the middle, µm'),
  tilt: z.enum(['free', 'fixed']).default('free').describe('whether the target may lie tilted'),
  biteUm: z.number().positive().default(5).describe('what one scraping pass takes off, µm'),
  stopPasses: z.int().nonnegative().default(0).describe('last passes that are left to the blue'),
});

const pinsSchema = z.strictObject({
  diameter: z.number().positive().describe('diameter of the two equal pins, in units.length'),
  angleDeg: z.number().gt(0).lt(180).describe('angle of the flank to the flat, degrees'),
  form: z.enum(['male', 'female']).describe('measured over the pins (male) or between them (female)'),
});

const coordinate = z.number().min(-1e9).max(1e9);

export const sheetSchema = z
  .strictObject({
    sheet: z.literal(1).describe('version of this format'),
    kind: z.enum(kinds).describe('what was surveyed'),
    title: text.optional().describe('what a person calls this survey'),
    phase: text.optional().describe('when in the job, as "as found"'),
    part: text.optional().describe('machine or part'),
    notes: text.optional().describe('anything worth keeping'),
    units: unitsSchema.prefault({}).describe('units of all numbers in this sheet'),
    stations: z
      .record(stationName, z.tuple([coordinate, coordinate]))
      .describe('[x along, y across] of each station, in units.length'),
    lines: z
      .record(id, z.array(stationName).min(2))
      .default({})
      .describe('the lines that figures are made for: station names in order'),
    walks: z.array(walkSchema).default([]).describe('tilts, read with a level on two feet'),
    sweeps: z.array(sweepSchema).default([]).describe('heights, read with an indicator'),
    pins: pinsSchema.optional().describe('the pins of a dovetail'),
    gravityCurvature: z
      .enum(['auto', 'on', 'off'])
      .default('auto')
      .describe('whether the curve of the horizon is added to tilts; auto: where it reaches 1 µm'),
    limits: z.array(limitSchema).default([]).describe('limits to judge the figures by'),
    target: targetSchema.optional().describe('the wished shape and how much one scraping pass takes off'),
  })
  .describe('A survey: stations, readings and what to judge them by');

/** A sheet with every default filled in; only `parseSheet` proves that it makes sense. */
export type Sheet = z.output<typeof sheetSchema>;
/** A sheet as it may be written: defaults may be left out. */
export type SheetInput = z.input<typeof sheetSchema>;
export type Walk = Sheet['walks'][number];
export type Sweep = Sheet['sweeps'][number];
export type Kind = Sheet['kind'];
export type Reference = (typeof references)[number];
