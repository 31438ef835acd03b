import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import { WayscribeError } from '../../shared/errors.ts';
import type { NewChange } from '../../shared/job/document.ts';
import type { Job } from '../../shared/job/job.ts';
import { roundName } from '../../shared/job/template.ts';
import { parseSheet } from '../../shared/sheet/sheet.ts';
import { verifyRecording } from '../recording/verify.ts';
import type { JobFolder } from './job-folder.ts';
import { readSession, readText } from './load.ts';

/** What a person says of a file that comes into a job; what is left out is taken from the file. */
export interface AddFile {
  readonly surface?: string;
  readonly round?: string;
  readonly by: string;
  readonly at: string;
  /** What a photograph shows. */
  readonly words?: string;
}

const PHOTO = /\.(jpe?g|png|webp|heic)$/i;
const RECORDING = /\.jsonl$/i;

/**
 * Takes a recording, a sheet or a photograph into a job. A surface that the job does not know yet is added. Nothing is
 * taken in that is not whole: throws what is wrong with the file.
 */
export async function addFile(folder: JobFolder, source: string, told: AddFile): Promise<void> {
  const { at, by } = told;
  if (PHOTO.test(source)) {
    await takeIn(folder, source, (photo) => [
      { at, by, change: 'photo', ...photo, words: told.words ?? photo.file },
    ]);
    return;
  }
  const found = RECORDING.test(source) ? await lookAtRecording(source) : await lookAtSheet(source);
  const surface = told.surface ?? found.surface;
  if (!surface) {
    throw new WayscribeError('job.invalid', source, 'the sheet does not name its surface', 'use --surface');
  }
  const { job } = folder;
  const round = told.round ?? found.round ?? roundName(job.surfaces.get(surface)?.rounds.length ?? 0);
  await takeIn(folder, source, (copy) => [
    ...newSurface(job, surface, { at, by }),
    { at, by, change: 'survey', surface, round, ...copy, link: found.link },
  ]);
}

/** Copies a file into the job and writes down what it is; where that is refused, no copy is left behind. */
async function takeIn(
  folder: JobFolder,
  source: string,
  changesFor: (copy: { file: string; sha256: string }) => NewChange[],
): Promise<void> {
  const copy = await folder.take(source);
  try {
    await folder.add(...changesFor(copy));
  } catch (error) {
    await rm(join(folder.path, copy.file), { force: true });
    throw error;
  }
}

function newSurface(job: Job, surface: string, stamp: { at: string; by: string }): NewChange[] {
  if (job.surfaces.has(surface)) return [];
  return [{ ...stamp, change: 'surface', surface, madeFrom: [] }];
}

interface Found {
  readonly surface: string | undefined;
  readonly round: string | undefined;
  readonly link: string | null;
}

async function lookAtRecording(source: string): Promise<Found> {
  const { problems, link, closed } = await verifyRecording(source);
  const [problem] = problems;
  if (problem) {
    throw new WayscribeError(
      'recording.broken',
      `${source} line ${problem.line}`,
      problem.what,
      'see `verify`',
    );
  }
  if (!closed) {
    throw new WayscribeError(
      'job.invalid',
      source,
      'this recording is not finished',
      'finish the survey first',
    );
  }
  const { setup } = await readSession(source);
  return { surface: setup.surface, round: setup.round, link };
}

async function lookAtSheet(source: string): Promise<Found> {
  const { lines, phase } = parseSheet(await readText(source));
  const names = Object.keys(lines);
  return { surface: names.length === 1 ? names[0] : undefined, round: phase, link: null };
}
