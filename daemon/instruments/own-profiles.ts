import { readdir, readFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { ProfileBook } from '../../protocols/book.ts';
import type { Profile } from '../../protocols/profile.ts';
import { readProfile } from '../../protocols/read-profile.ts';
import { shippedProfiles } from '../../protocols/shipped.ts';
import { isWayscribeError, WayscribeError } from '../../shared/errors.ts';
import { whyUnreadable } from '../unreadable.ts';

/** What a file of a profile may weigh. */
const mostBytes = 1 << 20;

/** Where a person's own profiles are: where it is said, else in the folder of the recordings. */
export function profilesFolder({
  folder,
  profiles,
}: {
  folder: string;
  profiles?: string | undefined;
}): string {
  return profiles ?? join(folder, 'profiles');
}

/**
 * The shipped profiles and a person's own ones, from a folder that need not be there. A file that is wrong is left
 * out and told in `problems`; it stops nothing else.
 */
export async function loadProfiles(
  folder: string,
): Promise<{ book: ProfileBook; problems: readonly WayscribeError[] }> {
  const names = (await readdir(folder).catch(() => [])).filter((name) => name.endsWith('.json')).sort();
  const own: Profile[] = [];
  const problems: WayscribeError[] = [];
  for (const name of names) {
    try {
      own.push(await ownProfile(join(folder, name), [...shippedProfiles, ...own]));
    } catch (error) {
      if (!isWayscribeError(error)) throw error;
      problems.push(error);
    }
  }
  return { book: new ProfileBook([...shippedProfiles, ...own]), problems };
}

/**
 * The data in a file of a profile.
 * @throws WayscribeError `profile.invalid` when the file can't be read or holds no JSON
 */
export async function readProfileFile(path: string): Promise<unknown> {
  const text = await readFile(path, 'utf8').catch((error) => {
    throw new WayscribeError('profile.invalid', path, whyUnreadable(error), 'name the file of a profile');
  });
  if (text.length > mostBytes)
    throw new WayscribeError('profile.invalid', path, 'is far too large for a profile');
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new WayscribeError('profile.invalid', path, `is no JSON: ${(error as Error).message}`);
  }
}

async function ownProfile(path: string, known: readonly Profile[]): Promise<Profile> {
  const profile = readProfile(await readProfileFile(path), path);
  if (`${profile.id}.json` !== basename(path)) {
    throw new WayscribeError(
      'profile.invalid',
      path,
      `its id is "${profile.id}"`,
      `call it ${profile.id}.json`,
    );
  }
  if (known.some(({ id }) => id === profile.id)) {
    throw new WayscribeError(
      'profile.invalid',
      path,
      `there is a profile "${profile.id}" already`,
      'choose another id',
    );
  }
  return profile;
}
