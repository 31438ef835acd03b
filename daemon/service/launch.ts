import { realpathSync } from 'node:fs';
import { homedir, userInfo } from 'node:os';
import { WayscribeError } from '../../shared/errors.ts';

/** How this program is to be started, and for whom. */
export interface Launch {
  /** Node and this program; it serves. What it serves is said by the file of settings. */
  readonly command: readonly [string, ...string[]];
  /** What is set for it besides. */
  readonly variables: Readonly<Record<string, string>>;
  readonly home: string;
  readonly user: string;
  readonly uid: number;
}

/**
 * How the program that runs now would be started again.
 * @throws WayscribeError `service.failed` when it lies where it will not stay
 */
export function ownLaunch(environment: NodeJS.ProcessEnv = process.env): Launch {
  const program = realpathSync(process.argv[1]!);
  if (/[\\/]_npx[\\/]/.test(program)) {
    throw new WayscribeError(
      'service.failed',
      program,
      'this program is here only for a while',
      'install it with npm install --global, and ask again',
    );
  }
  const { uid, username } = userInfo();
  const settings = environment.WAYSCRIBE_SETTINGS;
  return {
    command: [process.execPath, program, 'serve'],
    variables: settings ? { WAYSCRIBE_SETTINGS: settings } : {},
    home: homedir(),
    user: username,
    uid,
  };
}
