import { mkdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { WayscribeError } from '../../shared/errors.ts';
import { recordingError } from '../recording/file.ts';
import { JOB_FILE } from './job-folder.ts';
import { UNZIP_LIMITS, unzip } from './unzip.ts';

/** One step of a path that means the same on every system and leads nowhere else. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is refused
const PLAIN = /^(?!\.)[^/\\:*?"<>|\u0000-\u001f\u007f]{1,200}$/u;

interface Unpacked {
  readonly folder: string;
  readonly files: readonly { readonly name: string; readonly bytes: Uint8Array }[];
}

/**
 * Lays the job in an archive into a new folder below `into`, under the name that it has there. All of it or nothing,
 * and never over anything: job.json is written last. What the job is worth, `verifyJob` says.
 * @returns the new folder
 * Throws `job.invalid` when the archive is none of one job, `job.exists`, or what the disk refused.
 */
export async function unzipJob(archive: string, into: string): Promise<string> {
  const { folder, files } = await readArchive(archive);
  const path = join(into, folder);
  await mkdir(into, { recursive: true }).catch(refused(into));
  await mkdir(path).catch((error) => {
    if (error.code !== 'EEXIST') throw recordingError(error, path);
    throw new WayscribeError('job.exists', path, 'there is something already', 'name another `--folder`');
  });
  try {
    for (const { name, bytes } of files) await writeFile(join(path, name), bytes, { flag: 'wx' });
  } catch (error) {
    await rm(path, { recursive: true, force: true });
    throw recordingError(error, path);
  }
  return path;
}

async function readArchive(archive: string): Promise<Unpacked> {
  const { size } = await stat(archive).catch(refused(archive));
  if (size > UNZIP_LIMITS.bytes) throw invalid(archive, `is larger than ${UNZIP_LIMITS.bytes} bytes`);
  const bytes = await readFile(archive).catch(refused(archive));
  try {
    return oneJob(unzip(bytes));
  } catch (error) {
    if (!(error instanceof WayscribeError)) throw error;
    throw new WayscribeError(error.code, archive, error.detail, error.remedy);
  }
}

/** Proves that an archive holds the plain files of one folder, a job.json among them, which is put last. */
function oneJob(entries: ReturnType<typeof unzip>): Unpacked {
  const files = entries.map(({ name: path, bytes }) => {
    const steps = path.split('/');
    const [folder, name] = steps;
    if (steps.length !== 2 || !PLAIN.test(folder!) || !PLAIN.test(name!)) {
      throw invalid('', `${JSON.stringify(path)} is no file of one folder`);
    }
    return { folder: folder!, name: name!, bytes };
  });
  const folders = new Set(files.map(({ folder }) => folder));
  if (folders.size > 1) throw invalid('', `holds ${folders.size} folders, where a job is one`);
  // Some disks hold names that differ in capitals only for one.
  const names = new Set(files.map(({ name }) => name.normalize('NFC').toLowerCase()));
  if (names.size < files.length) throw invalid('', 'holds two files of one name');
  const job = files.find(({ name }) => name === JOB_FILE);
  if (!job) throw invalid('', `holds no ${JOB_FILE}`);
  return { folder: job.folder, files: [...files.filter((file) => file !== job), job] };
}

function refused(path: string): (error: unknown) => never {
  return (error) => {
    throw recordingError(error, path);
  };
}

function invalid(place: string, what: string): WayscribeError {
  return new WayscribeError('job.invalid', place, what, 'give an archive that `wayscribe job zip` has made');
}
