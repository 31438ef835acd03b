import { homedir, userInfo } from 'node:os';
import { join } from 'node:path';
import { type Command, InvalidArgumentError, Option } from 'commander';
import {
  defaultSettings,
  readSetting,
  type SettingName,
  settingNames,
  settingsShape,
  valueNames,
  variableOf,
} from '../settings/settings.ts';
import { readSettings, settingsPath } from '../settings/settings-file.ts';

/** Where recordings are kept unless told otherwise. */
export const homeFolder = defaultSettings.folder;

/** Where the demo keeps its own, so that they never mix with real ones. */
export const demoFolder = join(
  process.env.XDG_STATE_HOME || join(homedir(), '.local', 'state'),
  'wayscribe',
  'demo',
);

/** A setting as an option: what is typed holds, else its variable, else the file of settings, else the default. */
export function settingOption(name: SettingName): Option {
  const fallback = (defaultSettings as Partial<Record<SettingName, unknown>>)[name];
  const option = optionFor(name, settingsShape[name].description!).env(variableOf(name));
  return fallback === undefined ? option : option.default(fallback);
}

/** The folder of the recordings: the one that is set, or for the demo always its own. */
export function folderOption(folder: string): Option {
  if (folder === homeFolder) return settingOption('folder');
  return optionFor('folder', settingsShape.folder.description!).default(folder);
}

export function profilesOption(): Option {
  const option = settingOption('profiles');
  option.description += ' (default: "profiles" in --folder)';
  return option;
}

export function portOption(): Option {
  return settingOption('port');
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

/** Fills in what the file of settings says where neither an option nor a variable says more. */
export async function applySettingsFile(command: Command): Promise<void> {
  const open = settingsOf(command).filter((name) => {
    const source = command.getOptionValueSource(name);
    return source === undefined || source === 'default';
  });
  if (open.length === 0) return;
  const written = await readSettings(settingsPath());
  for (const name of open) {
    if (written[name] !== undefined) command.setOptionValueWithSource(name, written[name], 'config');
  }
}

/** The settings among the options of a command. */
function settingsOf(command: Command): SettingName[] {
  const variables = command.options.map(({ envVar }) => envVar);
  return settingNames.filter((name) => variables.includes(variableOf(name)));
}

function optionFor(name: SettingName, description: string): Option {
  return new Option(`--${name} <${valueNames[name]}>`, description).argParser((text) => {
    const read = readSetting(name, text);
    if ('value' in read) return read.value;
    throw new InvalidArgumentError(read.wrong);
  });
}
