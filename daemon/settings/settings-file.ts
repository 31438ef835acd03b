import { readFile } from 'node:fs/promises';
import { homedir } from 'node:os';
import { join } from 'node:path';
import { WayscribeError } from '../../shared/errors.ts';
import { whyUnreadable } from '../unreadable.ts';
import { type Settings, settingNames, settingsSchema } from './settings.ts';

/** Where the file of settings is, on every system the same; `WAYSCRIBE_SETTINGS` names another one. */
export function settingsPath(environment: NodeJS.ProcessEnv = process.env): string {
  const folder = environment.XDG_CONFIG_HOME || join(homedir(), '.config');
  return environment.WAYSCRIBE_SETTINGS || join(folder, 'wayscribe', 'settings.json');
}

/**
 * What the file of settings says; nothing when there is no such file.
 * @throws WayscribeError `settings.invalid` when it can't be read or says something else
 */
export async function readSettings(path: string): Promise<Settings> {
  const text = await readFile(path, 'utf8').catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return null;
    throw new WayscribeError('settings.invalid', path, whyUnreadable(error));
  });
  if (text === null) return {};
  const parsed = settingsSchema.safeParse(parse(path, text));
  if (parsed.success) return parsed.data;
  const [issue] = parsed.error.issues;
  throw new WayscribeError(
    'settings.invalid',
    [path, ...issue!.path].join(' '),
    issue!.message,
    `what can be set is ${settingNames.join(', ')}`,
  );
}

function parse(path: string, text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new WayscribeError('settings.invalid', path, `is no JSON: ${(error as Error).message}`);
  }
}
