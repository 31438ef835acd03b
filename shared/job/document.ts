import { z } from 'zod';
import { printShape } from '../session/events.ts';
import { sheetSchema } from '../sheet/schema.ts';

/**
 * A job: the surfaces of a machine or part from as found to as left. The document is a head and a list of changes
 * that only grows: what was wrong is withdrawn by a later change with its reason, and stays in the list. Everything
 * else about the job follows from the changes, and from the recordings and sheets that they name.
 */

const name = z.string().trim().min(1).max(120, 'has more than 120 letters');
const text = z.string().trim().min(1).max(2000);
const stationName = z.string().min(1).max(80);
const sha256 = z.string().regex(/^[0-9a-f]{64}$/);
const link = z.string().regex(/^[0-9a-f]{32}$/);
/** A file in the folder of the job itself, never a path. */
const file = z
  .string()
  .max(120)
  .regex(/^[A-Za-z0-9][A-Za-z0-9._-]*$/);

export const agreedLimitSchema = z.strictObject({
  figure: name.describe('the figure that is limited, as "front way.straightness"'),
  max: z.number().nonnegative().describe('largest allowed value, µm or µm/m'),
  source: name.describe('where the limit comes from: the sheet of the maker, a standard, an agreement'),
});
export type AgreedLimit = z.infer<typeof agreedLimitSchema>;

export const jobTargetSchema = sheetSchema.shape.target.unwrap().extend({
  passesPerRound: z.int().min(1).max(100).default(4).describe('passes to take before it is measured again'),
});
export type JobTarget = z.output<typeof jobTargetSchema>;

const stamp = {
  no: z.int().min(1).describe('number of the change, from 1'),
  at: z.iso.datetime().describe('when, UTC'),
  by: name.describe('who'),
};
const surface = name.describe('name of a surface');

export const changeSchema = z.discriminatedUnion('change', [
  z.strictObject({
    ...stamp,
    change: z.literal('surface'),
    surface,
    madeFrom: z.array(name).max(20).describe('surfaces that this one is made to'),
  }),
  z.strictObject({
    ...stamp,
    change: z.literal('limits'),
    surface,
    limits: z.array(agreedLimitSchema).max(50).describe('all limits of the surface from now on'),
  }),
  z.strictObject({ ...stamp, change: z.literal('target'), surface, target: jobTargetSchema }),
  z.strictObject({
    ...stamp,
    change: z.literal('survey'),
    surface,
    round: name.describe('as found, in work 1, … as left'),
    file,
    sha256,
    link: link.nullable().describe('link of the last line of a recording; null for a sheet'),
  }),
  z.strictObject({
    ...stamp,
    change: z.literal('passes'),
    surface,
    passes: z
      .array(z.array(stationName).min(1).max(10_000))
      .min(1)
      .max(1000)
      .describe('the stations that each pass of scraping covered'),
  }),
  z.strictObject({ ...stamp, change: z.literal('checked'), surface, why: text }),
  z.strictObject({ ...stamp, change: z.literal('photo'), file, sha256, words: text }),
  z.strictObject({
    ...stamp,
    change: z.literal('print').describe('where the surface took colour after its newest survey'),
    surface,
    ...printShape,
  }),
  z.strictObject({ ...stamp, change: z.literal('note'), text }),
  z.strictObject({ ...stamp, change: z.literal('withdrawn'), of: z.int().min(1), reason: text }),
]);
export type JobChange = z.infer<typeof changeSchema>;
export type ChangeOf<T extends JobChange['change']> = Extract<JobChange, { change: T }>;

type WithoutNo<C> = C extends unknown ? Omit<C, 'no'> : never;
/** A change before it is numbered. */
export type NewChange = WithoutNo<JobChange>;

export const jobHeadSchema = z.strictObject({
  job: z.literal(1).describe('version of this format'),
  part: name.describe('machine or part'),
  owner: z.string().trim().max(120).default('').describe('for whom the work is done'),
});
export type JobHead = z.infer<typeof jobHeadSchema>;
