import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import pack from '../package.json' with { type: 'json' };

/** Version of this program. */
export const version: string = pack.version;

/** What a recording says it was written by: program and version. */
export const program = `${pack.name} ${version}`;

/** The folder of the package, whether this runs from the source or from the built program. */
export const packageFolder = findPackage(import.meta.dirname);

function findPackage(folder: string): string {
  if (existsSync(join(folder, 'package.json'))) return folder;
  const above = dirname(folder);
  if (above === folder) throw new Error('package.json is missing beside the program');
  return findPackage(above);
}
