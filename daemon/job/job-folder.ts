import { hash } from 'node:crypto';
import { constants } from 'node:fs';
import { access, copyFile, mkdir, readFile } from 'node:fs/promises';
import { basename, extname, join } from 'node:path';
import { WayscribeError } from '../../shared/errors.ts';
import { changeSchema, type JobHead, jobHeadSchema, type NewChange } from '../../shared/job/document.ts';
import { checkChange, foldJob, type Job } from '../../shared/job/job.ts';
import { recordingError } from '../recording/file.ts';
import { lockFolder } from '../recording/lock.ts';
import { replaceFile } from '../replace-file.ts';
import { whyUnreadable } from '../unreadable.ts';
import { checkStations } from './check-stations.ts';
import { jobText, readJobText } from './job-text.ts';

type Survey = Extract<NewChange, { change: 'survey' }>;

export const JOB_FILE = 'job.json';

/** A folder with a job.json and the recordings, sheets and photographs that it names. */
export class JobFolder {
  readonly path: string;
  #job: Job;
  #link: string;

  private constructor(path: string, job: Job, link: string) {
    this.path = path;
    this.#job = job;
    this.#link = link;
  }

  /** Begins a job in a new or empty place. Throws `job.exists`, `job.invalid` or `recording.unwritable`. */
  static async create(path: string, head: Omit<JobHead, 'job'>): Promise<JobFolder> {
    const parsed = jobHeadSchema.safeParse({ job: 1, ...head });
    if (!parsed.success) throw invalid(parsed.error.issues[0]!);
    if (await isThere(join(path, JOB_FILE))) {
      throw new WayscribeError('job.exists', path, 'there is a job already', 'name another folder');
    }
    await mkdir(path, { recursive: true }).catch((error) => {
      throw recordingError(error, path);
    });
    const { text, link } = jobText(parsed.data, []);
    await replaceFile(join(path, JOB_FILE), text);
    return new JobFolder(path, foldJob(parsed.data, []), link);
  }

  /** Throws `job.notFound`, or `job.broken` with the first line that is not as it was written. */
  static async open(path: string): Promise<JobFolder> {
    const bytes = await readFile(join(path, JOB_FILE)).catch((error) => {
      const remedy = 'name the folder of a job, or begin one with `wayscribe job new`';
      throw new WayscribeError('job.notFound', path, noJobBecause(error), remedy);
    });
    const { document, problems } = readJobText(bytes);
    if (!document) {
      const [{ line, what }] = problems as [(typeof problems)[number]];
      throw new WayscribeError('job.broken', `${join(path, JOB_FILE)} line ${line}`, what, 'see `verify`');
    }
    return new JobFolder(path, foldJob(document.head, document.changes), document.link);
  }

  get job(): Job {
    return this.#job;
  }

  /** Link of the last change: with it, the whole document is known. */
  get link(): string {
    return this.#link;
  }

  /**
   * Adds changes to the end of the list; all of them or none. Throws `job.invalid`, `recording.locked`, or what the
   * disk refused.
   */
  async add(...changes: readonly NewChange[]): Promise<void> {
    const release = lockFolder(this.path);
    try {
      const { job } = await JobFolder.open(this.path);
      let next = job;
      for (const change of changes) {
        const parsed = changeSchema.safeParse({ no: next.changes.length + 1, ...change });
        if (!parsed.success) throw invalid(parsed.error.issues[0]!);
        checkChange(next, parsed.data);
        await checkStations({ path: this.path, job: next }, parsed.data);
        next = foldJob(next.head, [...next.changes, parsed.data]);
      }
      const { text, link } = jobText(next.head, next.changes);
      await replaceFile(join(this.path, JOB_FILE), text);
      this.#job = next;
      this.#link = link;
    } finally {
      release();
    }
  }

  /** Adds a survey whose file lies in the folder already. */
  async adopt(file: string, survey: Omit<Survey, 'change' | 'file' | 'sha256'>): Promise<void> {
    const sha256 = await digestOf(join(this.path, file));
    await this.add({ ...survey, change: 'survey', file, sha256 });
  }

  /** Copies a file into the job under a free name of its own. Answers with the name and the digest of what lies there. */
  async take(source: string): Promise<{ file: string; sha256: string }> {
    await access(source, constants.R_OK).catch((error) => {
      throw new WayscribeError('recording.notFound', source, whyUnreadable(error), 'name the file to add');
    });
    const extension = extname(source).toLowerCase();
    const stem = plainName(basename(source, extname(source)));
    for (let k = 1; ; k += 1) {
      const file = `${k === 1 ? stem : `${stem}-${k}`}${extension}`;
      try {
        await copyFile(source, join(this.path, file), constants.COPYFILE_EXCL);
        return { file, sha256: await digestOf(join(this.path, file)) };
      } catch (error) {
        if ((error as NodeJS.ErrnoException).code === 'EEXIST') continue;
        throw recordingError(error, source);
      }
    }
  }
}

/** Why there is no job: what the system said, and that alone where it is plain. */
export function noJobBecause(error: unknown): string {
  const { code } = error as NodeJS.ErrnoException;
  return code === 'ENOENT' || code === 'ENOTDIR' ? 'there is no job' : whyUnreadable(error);
}

/** SHA-256 of a file, 64 hex digits. */
export async function digestOf(path: string): Promise<string> {
  return hash('sha256', await readFile(path), 'hex');
}

function plainName(name: string): string {
  return (
    name
      .replace(/[^A-Za-z0-9._-]+/g, '-')
      .replace(/^[^A-Za-z0-9]+/, '')
      .slice(0, 80) || 'file'
  );
}

function isThere(path: string): Promise<boolean> {
  return access(path).then(
    () => true,
    () => false,
  );
}

function invalid({ path, message }: { path: PropertyKey[]; message: string }): WayscribeError {
  return new WayscribeError('job.invalid', path.join('.'), message, 'give it as the format wants it');
}
