import { Command, type OptionValueSource } from 'commander';
import { type SettingName, settingNames, settingsShape, variableOf } from '../settings/settings.ts';
import { settingsPath } from '../settings/settings-file.ts';
import { settingOption } from './options.ts';

/** `wayscribe settings`: what holds, and where it comes from. */
export function settingsCommand(): Command {
  const command = new Command('settings')
    .description('show the settings, and where each one comes from')
    .option('--json', 'as JSON, for programs');
  for (const name of settingNames) command.addOption(settingOption(name));
  return command.action((options: Record<string, unknown>) => {
    const held = settingNames.map((name) => ({
      name,
      value: withoutPassword(options[name]),
      from: originOf(name, command.getOptionValueSource(name)),
    }));
    if (options.json) {
      console.log(JSON.stringify(Object.fromEntries(held.map(({ name, ...rest }) => [name, rest])), null, 2));
      return;
    }
    const width = Math.max(...held.map(({ value }) => String(value ?? '—').length));
    for (const { name, value, from } of held) {
      console.log(`${name.padEnd(10)}${String(value ?? '—').padEnd(width + 2)}${from.padEnd(28)}`.trimEnd());
      console.log(`${' '.repeat(10)}${settingsShape[name].description}`);
    }
    console.log(`\nThe file of settings is ${settingsPath()}`);
  });
}

function originOf(name: SettingName, source: OptionValueSource | undefined): string {
  switch (source) {
    case 'cli':
      return `option --${name}`;
    case 'env':
      return `environment ${variableOf(name)}`;
    case 'config':
      return 'file';
    case 'default':
      return 'default';
    default:
      return 'not set';
  }
}

/** A password in an address is not for the screen. */
function withoutPassword(value: unknown): unknown {
  if (typeof value !== 'string') return value ?? null;
  return value.replace(/^(mqtts?:\/\/[^:@/]*):[^@/]*@/, '$1:•••@');
}
