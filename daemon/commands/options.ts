import { homedir, userInfo } from 'node:os';
import { join } from 'node:path';
import { InvalidArgumentError, Option } from 'commander';

const DEFAULT_PORT = 8383;
const LAST_PORT = 65_535;

/** Where recordings are kept unless told otherwise. */
export const homeFolder = join(homedir(), 'wayscribe');

/** Where the demo keeps its own, so that they never mix with real ones. */
export const demoFolder = join(
  process.env.XDG_STATE_HOME || join(homedir(), '.local', 'state'),
  'wayscribe',
  'demo',
);

export function folderOption(folder: string): Option {
  return new Option('--folder <dir>', 'folder of the recordings').default(folder);
}

export function profilesOption(): Option {
  return new Option(
    '--profiles <dir>',
    'folder of your own instrument profiles (default: "profiles" in --folder)',
  );
}

export function portOption(): Option {
  return new Option('--port <number>', 'port of the page on this computer; 0 takes a free one')
    .default(DEFAULT_PORT)
    .argParser((text) => {
      const port = /^\d+$/.test(text) ? Number(text) : Number.NaN;
      if (port <= LAST_PORT) return port;
      throw new InvalidArgumentError(`It is a whole number from 0 to ${LAST_PORT}.`);
    });
}

export function lanOption(): Option {
  return new Option(
    '--lan',
    'let devices in the network in: all may watch, those that you pair may control',
  ).default(false);
}

export function quietOption(): Option {
  return new Option('--no-open', 'do not open the page in a browser');
}

/** Who does something; the name that the system knows, unless told otherwise. */
export function byOption(): Option {
  return new Option('--by <person>', 'who does this').default(userInfo().username);
}
