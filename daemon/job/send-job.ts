import { extname, join } from 'node:path';
import { isWayscribeError } from '../../shared/errors.ts';
import type { ChangeOf } from '../../shared/job/document.ts';
import type { SentJob } from '../../shared/job/wire.ts';
import { toCsv } from '../../shared/session/to-csv.ts';
import { parseSheet } from '../../shared/sheet/sheet.ts';
import { readRecording } from '../recording/reader.ts';
import type { JobFolder } from './job-folder.ts';
import { loadSurveys, readSession, readText } from './load.ts';

/** A job as a page folds and reduces it. A file that cannot be read is told of in its place. */
export async function sentJob(id: string, { path, job, link }: JobFolder): Promise<SentJob> {
  const records = [...job.surfaces.values()].flatMap(({ rounds }) => rounds.map(({ survey }) => survey));
  return {
    id,
    link,
    head: job.head,
    changes: [...job.changes],
    surveys: await Promise.all(records.map((record) => sentSurvey(path, record))),
  };
}

async function sentSurvey(
  path: string,
  { no, file, link }: ChangeOf<'survey'>,
): Promise<SentJob['surveys'][number]> {
  try {
    if (link === null) return { as: 'sheet', no, sheet: parseSheet(await readText(join(path, file))) };
    const { header, events } = await readRecording(join(path, file), { skipReadings: true });
    return { as: 'recording', no, header, events };
  } catch (error) {
    if (!isWayscribeError(error)) throw error;
    return { as: 'unreadable', no, problem: error.detail };
  }
}

/** A file that a survey can be taken home as. */
export interface Export {
  readonly name: string;
  readonly type: string;
  readonly text: string;
}

/** One survey as a sheet with the limits and the target of the job, as the result that this sheet comes to, or, where it is a recording, as its readings. */
export async function exportOf(folder: JobFolder, no: number, what: string): Promise<Export | null> {
  const survey = (await loadSurveys(folder)).surveys.find(({ record }) => record.no === no);
  if (!survey) return null;
  const { file, link } = survey.record;
  const stem = file.slice(0, -extname(file).length);
  const json = (value: unknown) => `${JSON.stringify(value, null, 2)}\n`;
  if (what === 'result.json') {
    return { name: `${stem}-result.json`, type: 'json', text: json(survey.result) };
  }
  if (what === 'sheet.json') {
    return { name: `${stem}-sheet.json`, type: 'json', text: json(survey.sheet) };
  }
  const session = link === null ? null : await readSession(join(folder.path, file));
  if (what !== 'readings.csv' || !session) return null;
  return { name: `${stem}.csv`, type: 'text/csv', text: toCsv(session) };
}
