import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { isWayscribeError, WayscribeError } from '../../shared/errors.ts';
import type { ChangeOf } from '../../shared/job/document.ts';
import type { Job } from '../../shared/job/job.ts';
import type { UnreadableSurvey } from '../../shared/job/open.ts';
import { type JobSurvey, linesUnder, surveyOf } from '../../shared/job/survey.ts';
import { fold, type Session } from '../../shared/session/fold.ts';
import { parseSheet } from '../../shared/sheet/sheet.ts';
import { readRecording } from '../recording/reader.ts';
import { whyUnreadable } from '../unreadable.ts';

/** A job and where its files lie. */
export interface JobInFolder {
  readonly path: string;
  readonly job: Job;
}

/** Every survey of a job that stands, in the order in which they were added: what it comes to, or why that is not known. */
export async function loadSurveys(
  folder: JobInFolder,
): Promise<{ surveys: JobSurvey[]; unreadable: UnreadableSurvey[] }> {
  const surveys: JobSurvey[] = [];
  const unreadable: UnreadableSurvey[] = [];
  for (const record of recordsOf(folder.job)) {
    try {
      surveys.push(await loadSurvey(folder, record));
    } catch (error) {
      if (!isWayscribeError(error)) throw error;
      unreadable.push({ record, problem: error.detail });
    }
  }
  return { surveys, unreadable };
}

async function loadSurvey({ path, job }: JobInFolder, record: ChangeOf<'survey'>): Promise<JobSurvey> {
  const surface = job.surfaces.get(record.surface)!;
  const file = join(path, record.file);
  return record.link === null
    ? surveyOf(surface, record, { sheet: parseSheet(await readText(file)) })
    : surveyOf(surface, record, { session: await readSession(file) });
}

/** The lines of stations of the newest survey of a surface; null before the first, or when it cannot be read. */
export async function stationsOf(folder: JobInFolder, surface: string): Promise<string[][] | null> {
  const record = folder.job.surfaces.get(surface)?.rounds.at(-1)?.survey;
  if (!record) return null;
  try {
    return linesUnder(await loadSurvey(folder, record));
  } catch (error) {
    if (isWayscribeError(error)) return null;
    throw error;
  }
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

/** @throws WayscribeError `recording.notFound` */
export function readText(path: string): Promise<string> {
  return readFile(path, 'utf8').catch((error) => {
    throw new WayscribeError('recording.notFound', path, whyUnreadable(error), 'name a sheet or a recording');
  });
}
