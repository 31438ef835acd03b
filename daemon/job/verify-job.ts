import { hash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { isWayscribeError, WayscribeError } from '../../shared/errors.ts';
import type { ChangeOf, JobChange } from '../../shared/job/document.ts';
import { readEvidence, unsealReport } from '../../shared/report/evidence.ts';
import { verifyRecording } from '../recording/verify.ts';
import { digestOf, JOB_FILE, noJobBecause } from './job-folder.ts';
import { type JobDocument, readJobText } from './job-text.ts';

/** What is wrong in a file of a job, and on which line where that can be told. */
export interface FileProblem {
  readonly file: string;
  readonly line?: number;
  readonly what: string;
}

export interface JobVerdict {
  /** Every file that was looked at. */
  readonly files: readonly string[];
  readonly problems: readonly FileProblem[];
  /** Link of the last change; null when job.json itself is not as it was written. */
  readonly link: string | null;
}

/**
 * Checks a job from end to end: every byte of job.json, every recording by its chain and by the digest in job.json,
 * sheets and photographs by their digests, and reports in the folder, and those named beside it, by their own seal
 * and by the digests that they state. Throws `job.notFound` when there is no job.
 */
export async function verifyJob(folder: string, reports: readonly string[] = []): Promise<JobVerdict> {
  const bytes = await readFile(join(folder, JOB_FILE)).catch((error) => {
    throw new WayscribeError('job.notFound', folder, noJobBecause(error), 'name the folder of a job');
  });
  const { document, problems: inDocument } = readJobText(bytes);
  const problems: FileProblem[] = inDocument.map((problem) => ({ file: JOB_FILE, ...problem }));
  const files = [JOB_FILE];
  for (const change of withFiles(document?.changes ?? [])) {
    files.push(change.file);
    const found = await checkFile(folder, change);
    if (found) problems.push(found);
  }
  const inFolder = (await readdir(folder)).filter((name) => name.endsWith('.html')).sort();
  for (const report of [...inFolder.map((name) => join(folder, name)), ...reports]) {
    files.push(report);
    problems.push(...(await checkReport(report, document)).map((what) => ({ file: report, what })));
  }
  return { files, problems, link: document?.link ?? null };
}

type WithFile = ChangeOf<'survey'> | ChangeOf<'photo'>;

function withFiles(changes: readonly JobChange[]): WithFile[] {
  return changes.filter((change): change is WithFile => 'file' in change);
}

async function checkFile(folder: string, change: WithFile): Promise<FileProblem | null> {
  const { file, sha256 } = change;
  const path = join(folder, file);
  try {
    if (change.change === 'survey' && change.link !== null) {
      const { problems } = await verifyRecording(path);
      const [first] = problems;
      if (first) return { file, line: first.line, what: first.what };
    }
    if ((await digestOf(path)) === sha256) return null;
    return { file, what: 'is not the file that was added: its digest is another' };
  } catch (error) {
    if (isWayscribeError(error, 'recording.notFound') || (error as NodeJS.ErrnoException).code === 'ENOENT') {
      return { file, what: 'is missing' };
    }
    const { code } = error as NodeJS.ErrnoException;
    if (code === undefined) throw error;
    return { file, what: `cannot be read (${code})` };
  }
}

async function checkReport(path: string, document: JobDocument | null): Promise<string[]> {
  const bytes = await readFile(path).catch(() => null);
  if (!bytes) return ['is missing'];
  const text = bytes.toString('latin1');
  const sealed = unsealReport(text);
  if (!sealed) return ['has no seal at its end: it is no report, or it was cut off'];
  const digest = hash('sha256', Buffer.from(sealed.body, 'latin1'), 'hex');
  if (digest !== sealed.sha256) return ['was changed: its seal does not match'];
  const evidence = readEvidence(sealed.body);
  if (!evidence) return ['names no recordings'];
  if (!document) return ['cannot be compared: job.json is not as it was written'];
  const known = new Map(withFiles(document.changes).map((change) => [change.file, change.sha256]));
  return evidence.files
    .filter(({ file, sha256 }) => known.get(file) !== sha256)
    .map(({ file }) => `rests on another ${file} than the one in this job`);
}
