import { z } from 'zod';
import { kinds, references } from './schema.ts';

/**
 * What a reduction answers. Heights and their standard uncertainties in µm, slopes in µm/m; a positive
 * height stands proud of the reference. `u` is one standard deviation, `U` is 2·u.
 */

const height = z.strictObject({
  heightUm: z.number().describe('height over the reference, µm'),
  uUm: z.number().describe('standard uncertainty of that height, µm'),
});

const departure = z.strictObject({
  valueUm: z.number().describe('largest less smallest departure from the reference, µm'),
  uUm: z.number().describe('its standard uncertainty, through the stations that define it, µm'),
  highest: z.string().describe('station that stands highest'),
  lowest: z.string().describe('station that lies lowest'),
});

const figure = z.strictObject({
  value: z.number(),
  unit: z.enum(['um', 'um/m', 'um/m per m']),
  u: z.number().describe('standard uncertainty, in the same unit'),
});

const fitted = {
  residual: z.number().describe('adjusted less observed; µm/m for a walk, µm for a sweep'),
  redundancy: z.number().describe('share of an error of this reading that the others show, 0 to 1'),
  w: z.number().nullable().describe('standardised residual; null when nothing checks the reading'),
  suspect: z.boolean().describe('the one reading that disagrees most with its neighbours'),
};

export const resultSchema = z.strictObject({
  result: z.literal(1).describe('version of this format'),
  kind: z.enum(kinds),
  reference: z.enum(references).describe('what the heights are shown against'),
  stations: z.record(z.string(), height),
  lines: z.record(
    z.string(),
    z.strictObject({
      straightness: z.strictObject({ ends: departure, leastSquares: departure, minimumZone: departure }),
      stations: z.record(z.string(), height).describe('this line against its own reference'),
      shape: z.string().describe('in one word: straight, crown, hollow, s-shaped …'),
    }),
  ),
  figures: z.record(z.string(), figure),
  readings: z
    .array(
      z.union([
        z.strictObject({ walk: z.string(), from: z.string(), to: z.string(), ...fitted }),
        z.strictObject({ sweep: z.string(), at: z.string(), ...fitted }),
      ]),
    )
    .describe('every reading that was taken, in the order of the sheet, walks first'),
  fit: z.strictObject({
    observations: z.int(),
    unknowns: z.int(),
    datumDefect: z.int().describe('how many unknowns the readings cannot see and the datum holds'),
    degreesOfFreedom: z.int(),
    s0: z.number().nullable().describe('scatter against the stated sigma; null with nothing left over'),
    chiSquareOk: z.boolean().nullable().describe('s0² not above the 95 % point; null with nothing left over'),
    sigmaScaled: z.boolean().describe('whether the uncertainties were scaled by s0'),
  }),
  zeros: z
    .record(z.string(), z.strictObject({ value: z.number(), u: z.number() }))
    .describe('zeros of the level that the readings determine, µm/m'),
  verdicts: z.array(
    z.strictObject({
      figure: z.string(),
      reference: z.enum(references).optional(),
      limit: z.number(),
      value: z.number(),
      U: z.number(),
      verdict: z.enum(['within', 'outside', 'cannot tell']),
      reason: z.string().optional(),
    }),
  ),
  metal: z.record(
    z.string(),
    z.strictObject({
      target: z.string().describe('in one word: flat, crown, hollow'),
      stations: z.record(
        z.string(),
        z.strictObject({
          removeUm: z.number().describe('what is to come off, µm'),
          uUm: z.number().describe('its standard uncertainty, µm'),
          passes: z.int().describe('scraping passes that it takes'),
          worthAStroke: z.boolean().describe('whether it is more than twice its own uncertainty'),
        }),
      ),
      plan: z
        .array(z.strictObject({ pass: z.int(), stations: z.array(z.string()) }))
        .describe('pass by pass, the high ground first'),
      contact: z
        .strictObject({
          restsOn: z.array(z.string()).describe('where a flat plate would rest on the metal as it is'),
          inked: z.array(z.string()).describe('what would take its ink'),
        })
        .describe('the print to expect before the next stroke'),
    }),
  ),
  notes: z.array(z.string()).describe('what was assumed, scaled, corrected, not checked'),
});

export type Result = z.infer<typeof resultSchema>;
