import { type FileHandle, open } from 'node:fs/promises';
import { dirname } from 'node:path';
import { WayscribeError } from '../../shared/errors.ts';

/** The little that the writer asks of a file. Tests put a failing one in its place. */
export interface RecordingFile {
  /** Writes all of `bytes` at `position`, or throws. */
  write(bytes: Uint8Array, position: number): Promise<void>;
  truncate(size: number): Promise<void>;
  /** Returns when everything written is on the disk. */
  sync(): Promise<void>;
  close(): Promise<void>;
}

/** `create`: a file that must not exist yet. `existing`: one that must. */
export type OpenFile = (path: string, how: 'create' | 'existing') => Promise<RecordingFile>;

export const openFile: OpenFile = async (path, how) => {
  const handle = await open(path, how === 'create' ? 'wx' : 'r+');
  if (how === 'create') await syncFolderOf(path);
  return {
    write: (bytes, position) => writeAll(handle, bytes, position),
    truncate: (size) => handle.truncate(size),
    sync: () => handle.datasync(),
    close: () => handle.close(),
  };
};

async function writeAll(handle: FileHandle, bytes: Uint8Array, position: number): Promise<void> {
  let done = 0;
  while (done < bytes.length) {
    const { bytesWritten } = await handle.write(bytes, done, bytes.length - done, position + done);
    done += bytesWritten;
  }
}

/** A new file outlives a power cut only once its folder is on the disk too. Not every system can say so. */
async function syncFolderOf(path: string): Promise<void> {
  const folder = await open(dirname(path)).catch(() => null);
  await folder?.sync().catch(() => {});
  await folder?.close();
}

/** What the system refused, as an error that a person can act on. */
export function recordingError(error: unknown, path: string): WayscribeError {
  if (error instanceof WayscribeError) return error;
  const code = (error as NodeJS.ErrnoException).code ?? String(error);
  switch (code) {
    case 'ENOSPC':
    case 'EDQUOT':
    case 'EFBIG':
      return new WayscribeError(
        'recording.full',
        path,
        `the disk is full, so nothing more is recorded (${code})`,
        'make room and take again; all that was shown as taken is safe',
      );
    case 'EACCES':
    case 'EPERM':
    case 'EROFS':
      return new WayscribeError(
        'recording.unwritable',
        path,
        `may not be written (${code})`,
        'allow writing there or choose another folder',
      );
    case 'ENAMETOOLONG':
      return new WayscribeError(
        'recording.unwritable',
        path,
        'the name is too long for a file',
        'give it a shorter one',
      );
    case 'ENOENT':
    case 'ENOTDIR':
      return new WayscribeError(
        'recording.unwritable',
        path,
        'its folder is not there',
        'name a folder that is',
      );
    default:
      return new WayscribeError(
        'recording.unwritable',
        path,
        `the disk refused to write (${code})`,
        'check the disk and take again; all that was shown as taken was written before',
      );
  }
}
