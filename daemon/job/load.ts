import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { WayscribeError } from '../../shared/errors.ts';
import type { ChangeOf } from '../../shared/job/document.ts';
import type { Job } from '../../shared/job/job.ts';
import { type JobSurvey, surveyOf } from '../../shared/job/survey.ts';
import { fold, type Session } from '../../shared/session/fold.ts';
import { parseSheet } from '../../shared/sheet/sheet.ts';
import { readRecording } from '../recording/reader.ts';
import type { JobFolder } from './job-folder.ts';

/** Every survey of a job that stands, in the order in which they were added, each with what it comes to. */
export async function loadSurveys({ path, job }: Pick<JobFolder, 'path' | 'job'>): Promise<JobSurvey[]> {
  const surveys: JobSurvey[] = [];
  for (const record of recordsOf(job)) {
    const surface = job.surfaces.get(record.surface)!;
    const file = join(path, record.file);
    surveys.push(
      record.link === null
        ? surveyOf(surface, record, { sheet: parseSheet(await readText(file)) })
        : surveyOf(surface, record, { session: await readSession(file) }),
    );
  }
  return surveys;
}

/** A recording folded to its end. */
export async function readSession(path: string): Promise<Session> {
  const { header, events } = await readRecording(path, { skipReadings: true });
  return fold(header, events);
}

function recordsOf(job: Job): ChangeOf<'survey'>[] {
  return [...job.surfaces.values()]
    .flatMap(({ rounds }) => rounds.map(({ survey }) => survey))
    .sort((a, b) => a.no - b.no);
}

function readText(path: string): Promise<string> {
  return readFile(path, 'utf8').catch((error) => {
    throw new WayscribeError('recording.notFound', path, `cannot be opened (${error.code})`);
  });
}
