import { closeSync, openSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { WayscribeError } from '../../shared/errors.ts';
import { recordingError } from './file.ts';

const NAME = /^\.lock-(\d+)-(\d+)$/;

/**
 * Takes a folder of recordings for this process; the function that it returns gives it back. Throws
 * `recording.locked` and says who holds it, or `recording.unwritable`.
 *
 * Every process puts down an empty file of its own, named by its process number and start, and only then
 * looks for others. Of two that start at once at least one sees the other, so never do both go on. What a
 * dead process left is taken away.
 */
export function lockFolder(folder: string): () => void {
  const own = `.lock-${process.pid}-${startOf(process.pid) ?? 0}`;
  const path = join(folder, own);
  try {
    closeSync(openSync(path, 'wx'));
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') throw heldBy(folder, process.pid, own);
    throw recordingError(error, folder);
  }
  const release = () => rmSync(path, { force: true });
  for (const name of readdirSync(folder)) {
    const [, pid, start] = NAME.exec(name) ?? [];
    if (name === own || pid === undefined) continue;
    if (isAlive(Number(pid), Number(start))) {
      release();
      throw heldBy(folder, Number(pid), name);
    }
    rmSync(join(folder, name), { force: true });
  }
  return release;
}

function heldBy(folder: string, pid: number, file: string): WayscribeError {
  return new WayscribeError(
    'recording.locked',
    folder,
    `process ${pid} is writing recordings there`,
    `end that process, or choose another folder; if it is no Wayscribe, remove the file ${file}`,
  );
}

function isAlive(pid: number, start: number): boolean {
  try {
    process.kill(pid, 0);
  } catch (error) {
    // EPERM: it lives, and belongs to somebody else.
    if ((error as NodeJS.ErrnoException).code === 'ESRCH') return false;
  }
  // Process numbers come round again; the start tells the one who locked from a later one.
  const found = startOf(pid);
  return start === 0 || found === null || found === start;
}

/** Start of a process in clock ticks since the machine started; null where the system does not tell. */
function startOf(pid: number): number | null {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, 'latin1');
    // proc(5): the name of the program stands in brackets and may hold anything; the start is field 22.
    const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ');
    return Number(fields[22 - 3]);
  } catch {
    return null;
  }
}
