import { open, rename } from 'node:fs/promises';
import { dirname } from 'node:path';
import { recordingError } from './recording/file.ts';

/**
 * Writes a file whole, beside the old one, and puts it in its place only when it is on the disk.
 * @throws WayscribeError `recording.full` or `recording.unwritable`
 */
export async function replaceFile(path: string, text: string, mode = 0o666): Promise<void> {
  const beside = `${path}.new`;
  try {
    const handle = await open(beside, 'w', mode);
    try {
      await handle.writeFile(text);
      await handle.sync();
    } finally {
      await handle.close();
    }
    await rename(beside, path);
    // Not every system can sync a folder; those that can't keep the rename anyway.
    const folder = await open(dirname(path)).catch(() => null);
    await folder?.sync().catch(() => {});
    await folder?.close();
  } catch (error) {
    throw recordingError(error, path);
  }
}
