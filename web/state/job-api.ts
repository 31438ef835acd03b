import type { z } from 'zod';
import { isWayscribeError } from '../../shared/errors.ts';
import { type OpenJob, openJob } from '../../shared/job/open.ts';
import {
  type AskedChange,
  type AskedFile,
  jobLinkSchema,
  jobListSchema,
  jobVerdictSchema,
  keptFileSchema,
  madeJobSchema,
  sentJobSchema,
} from '../../shared/job/wire.ts';
import { errorSchema, type SentError } from '../../shared/messages.ts';

/** What was asked for, or why it is not to be had. */
export type Answer<T> =
  | { readonly found: T; readonly error?: undefined }
  | { readonly found?: undefined; readonly error: SentError };

const lost: SentError = {
  code: 'command.refused',
  place: 'daemon',
  message: 'the program does not answer',
  remedy: 'see whether it still runs',
};

let writes = 0;
/** How often this page has asked for a job to be written, to tell its own changes from those of others. */
export const writesSoFar = () => writes;

async function ask<T>(path: string, schema: z.ZodType<T> | null, init?: RequestInit): Promise<Answer<T>> {
  if (init) writes += 1;
  try {
    const response = await fetch(`api/jobs${path}`, init);
    if (response.status === 204) return { found: undefined as T };
    const body: unknown = await response.json();
    if (response.ok && schema) return { found: schema.parse(body) };
    const error = errorSchema.safeParse(body);
    return { error: error.success ? error.data : lost };
  } catch {
    return { error: lost };
  }
}

const post = (body: unknown): RequestInit => ({
  method: 'POST',
  headers: { 'content-type': 'application/json' },
  body: JSON.stringify(body),
});

const of = (id: string, ...rest: string[]) => ['', id, ...rest].map(encodeURIComponent).join('/');

export const askJobs = () => ask('', jobListSchema);
export const newJob = (part: string, owner: string) => ask('', madeJobSchema, post({ part, owner }));

/** The job, folded and reduced. */
export async function askJob(id: string): Promise<Answer<OpenJob>> {
  const sent = await ask(of(id), sentJobSchema);
  if (sent.error) return { error: sent.error };
  try {
    return { found: openJob(sent.found) };
  } catch (error) {
    if (!isWayscribeError(error)) throw error;
    const { code, place, detail: message, remedy } = error;
    return { error: { code, place, message, remedy } };
  }
}

/** Writes changes down; all of them or none. */
export const writeChanges = (id: string, by: string, changes: readonly AskedChange[]) =>
  ask<void>(of(id, 'changes'), null, post({ by, changes }));

/** Takes a recording of this computer into the job. */
export const takeRecording = (id: string, recording: string, told: AskedFile) =>
  ask(of(id, 'recordings', recording), keptFileSchema, post(told));

/** Takes a sheet, a recording or a photograph into the job. */
export const takeFile = (id: string, file: File, told: AskedFile) =>
  ask(
    `${of(id, 'files', file.name)}?${new URLSearchParams(told as Record<string, string>)}`,
    keptFileSchema,
    {
      method: 'POST',
      headers: { 'content-type': 'application/octet-stream' },
      body: file,
    },
  );

export const askLink = (id: string) => ask(of(id, 'link'), jobLinkSchema);
export const keepReport = (id: string, by: string) => ask(of(id, 'report'), keptFileSchema, post({ by }));
export const askVerdict = (id: string) => ask(of(id, 'verify'), jobVerdictSchema);

/** Addresses of what is opened or taken home. The report stands among the files, so that its links to them hold. */
export const reportPath = (id: string, by: string) =>
  `api/jobs${of(id, 'files')}/?${new URLSearchParams({ by })}`;
export const zipPath = (id: string) => `api/jobs${of(id, 'zip')}`;
export const filePath = (id: string, file: string) => `api/jobs${of(id, 'files', file)}`;
export const surveyPath = (id: string, no: number, what: 'sheet.json' | 'result.json' | 'readings.csv') =>
  `api/jobs${of(id, 'surveys', String(no), what)}`;
