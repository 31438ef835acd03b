import { z } from 'zod';
import { eventSchema, headerSchema } from '../session/events.ts';
import { changeSchema, jobHeadSchema } from './document.ts';

/** What crosses the wire about jobs, under /api/jobs. */

/** GET jobs: the one that was worked on last comes first. */
export const jobListSchema = z.array(
  z.object({
    id: z.string(),
    part: z.string(),
    owner: z.string(),
    changedAt: z.string().nullable().describe('when the last change was written, UTC'),
    surfaces: z.array(
      z.object({ name: z.string(), rounds: z.array(z.string()).describe('what its surveys are called') }),
    ),
    problem: z.string().nullable().describe('why it cannot be opened'),
  }),
);
export type JobList = z.infer<typeof jobListSchema>;

/** GET jobs/ID: the document and what its surveys rest on; the page reduces them by the same functions. */
export const sentJobSchema = z.object({
  id: z.string(),
  link: z.string().describe('link of the last change'),
  head: jobHeadSchema,
  changes: z.array(changeSchema),
  surveys: z.array(
    z.discriminatedUnion('as', [
      z.object({
        as: z.literal('recording'),
        no: z.int().describe('number of the change that added it'),
        header: headerSchema,
        events: z.array(eventSchema).describe('without the stream of readings'),
      }),
      z.object({ as: z.literal('sheet'), no: z.int(), sheet: z.unknown() }),
      z.object({
        as: z.literal('unreadable'),
        no: z.int(),
        problem: z.string().describe('why its file cannot be read'),
      }),
    ]),
  ),
});
export type SentJob = z.infer<typeof sentJobSchema>;

/** GET jobs/ID/link: whether the job is still the one that a page has drawn. */
export const jobLinkSchema = z.object({ link: z.string() });
export type JobLink = z.infer<typeof jobLinkSchema>;

/** POST jobs: begins one. Answered with its `id`. */
export const newJobSchema = z.strictObject({
  part: jobHeadSchema.shape.part,
  owner: jobHeadSchema.shape.owner,
});
export const madeJobSchema = z.object({ id: z.string() });

const by = z.string().trim().min(1).max(120).describe('who');

/** Changes that a person writes down. What brings a file along has an address of its own. */
const writtenChanges = [
  'surface',
  'limits',
  'target',
  'passes',
  'checked',
  'print',
  'note',
  'withdrawn',
] as const;

/** POST jobs/ID/changes: all of them or none. The daemon numbers and dates them. */
export const askedChangesSchema = z.strictObject({
  by,
  changes: z
    .array(z.looseObject({ change: z.enum(writtenChanges) }))
    .min(1)
    .max(50),
});

type Unstamped<C> = C extends { change: (typeof writtenChanges)[number] }
  ? Omit<C, 'no' | 'at' | 'by'>
  : never;
/** A change as the page asks for it. */
export type AskedChange = Unstamped<z.input<typeof changeSchema>>;

/** POST jobs/ID/recordings/RECORDING, and the query of POST jobs/ID/files. */
export const askedFileSchema = z.object({
  by,
  surface: z.string().min(1).max(120).optional(),
  round: z.string().min(1).max(120).optional(),
  words: z.string().min(1).max(2000).optional().describe('what a photograph shows'),
});
export type AskedFile = z.infer<typeof askedFileSchema>;

/** The answer to a file: under which name it lies in the job, and its digest. */
export const keptFileSchema = z.object({ file: z.string(), sha256: z.string() });
export type KeptFile = z.infer<typeof keptFileSchema>;

/** GET jobs/ID/verify. */
export const jobVerdictSchema = z.object({
  files: z.array(z.string()).describe('every file that was looked at'),
  problems: z.array(
    z.object({ file: z.string(), line: z.number().optional(), what: z.string().describe('what is wrong') }),
  ),
  link: z.string().nullable(),
});

export type JobVerdict = z.infer<typeof jobVerdictSchema>;
