import { readdir, readFile, stat } from 'node:fs/promises';
import { basename, join, resolve } from 'node:path';
import { type ZipEntry, zip } from './zip.ts';

/** Every file of a job in one archive, under the name of its folder. */
export async function zipJob(path: string): Promise<{ bytes: Buffer; files: number }> {
  const folder = basename(resolve(path));
  const names = (await readdir(path)).filter((name) => !name.startsWith('.')).sort();
  const entries = await Promise.all(
    names.map(
      async (name): Promise<ZipEntry> => ({
        name: `${folder}/${name}`,
        bytes: await readFile(join(path, name)),
        modified: (await stat(join(path, name))).mtime,
      }),
    ),
  );
  return { bytes: zip(entries), files: entries.length };
}
