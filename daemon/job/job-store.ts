import { access, cp, mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { isWayscribeError, WayscribeError } from '../../shared/errors.ts';
import type { JobHead } from '../../shared/job/document.ts';
import type { JobList } from '../../shared/job/wire.ts';
import { slug } from '../recording/store.ts';
import { Turns } from '../session/turns.ts';
import { JOB_FILE, JobFolder } from './job-folder.ts';

/** The jobs in a folder, one subfolder with a job.json each; the name of the subfolder is the id. */
export class JobStore {
  readonly folder: string;
  /** One change after the other: two pages may write at once. */
  readonly turns = new Turns();

  constructor(folder: string) {
    this.folder = folder;
  }

  /** The one that was worked on last comes first. One that cannot be opened is listed with the reason. */
  async list(): Promise<JobList> {
    const ids = await this.#ids();
    const found = await Promise.all(ids.map((id) => this.#look(id)));
    return found.sort((a, b) => (b.changedAt ?? '').localeCompare(a.changedAt ?? ''));
  }

  /** The job with this id. Throws `job.notFound`, or `job.broken`. */
  async open(id: string): Promise<JobFolder> {
    // Looked up in what is there: an id is never joined to a path as it came.
    const known = (await this.#ids()).find((each) => each === id);
    if (known === undefined) {
      throw new WayscribeError('job.notFound', JSON.stringify(id.slice(0, 80)), 'there is no such job');
    }
    return JobFolder.open(join(this.folder, known));
  }

  /** Begins a job in a subfolder of its own; answers with its id. */
  async create(head: Omit<JobHead, 'job'>): Promise<string> {
    const stem = slug(head.part) || 'job';
    for (let k = 1; ; k += 1) {
      const id = k === 1 ? stem : `${stem}-${k}`;
      if (await isThere(join(this.folder, id))) continue;
      await JobFolder.create(join(this.folder, id), head);
      return id;
    }
  }

  /** A copy of the job in `source`, unless one of that name is there already. */
  async seed(source: string): Promise<void> {
    const path = join(this.folder, basename(source));
    if (!(await isThere(path)) && (await isThere(source))) await cp(source, path, { recursive: true });
  }

  async #ids(): Promise<string[]> {
    const entries = await readdir(this.folder, { withFileTypes: true });
    const folders = entries.filter((entry) => entry.isDirectory()).map(({ name }) => name);
    const jobs = await Promise.all(folders.map((name) => isThere(join(this.folder, name, JOB_FILE))));
    return folders.filter((_, k) => jobs[k]).sort();
  }

  async #look(id: string): Promise<JobList[number]> {
    try {
      const { job } = await JobFolder.open(join(this.folder, id));
      const surfaces = [...job.surfaces.values()].map(({ name, rounds }) => ({
        name,
        rounds: rounds.map(({ survey }) => survey.round),
      }));
      return { id, ...job.head, changedAt: job.changes.at(-1)?.at ?? null, surfaces, problem: null };
    } catch (error) {
      if (!isWayscribeError(error)) throw error;
      return { id, part: id, owner: '', changedAt: null, surfaces: [], problem: error.message };
    }
  }
}

/** Lays bytes down as a file of that name for as long as `use` needs it. */
export async function asFile<T>(
  name: string,
  bytes: Uint8Array,
  use: (path: string) => Promise<T>,
): Promise<T> {
  const folder = await mkdtemp(join(tmpdir(), 'wayscribe-'));
  try {
    const path = join(folder, basename(name).slice(-100) || 'file');
    await writeFile(path, bytes);
    return await use(path);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

function isThere(path: string): Promise<boolean> {
  return access(path).then(
    () => true,
    () => false,
  );
}
