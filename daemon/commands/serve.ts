import { Command } from 'commander';
import type { defaultSettings, Settings } from '../settings/settings.ts';
import { folderOption, homeFolder, lanOption, portOption, profilesOption, settingOption } from './options.ts';
import { serveUntilStopped } from './serving.ts';

type ServeOptions = Settings & typeof defaultSettings & { readonly lan: boolean };

/** `wayscribe serve`: the daemon with real instruments. */
export function serveCommand(): Command {
  return new Command('serve')
    .description('listen to the instruments and serve the page (what happens without a command)')
    .addOption(folderOption(homeFolder))
    .addOption(portOption())
    .addOption(profilesOption())
    .addOption(lanOption())
    .addOption(settingOption('broker'))
    .addOption(settingOption('topic'))
    .addOption(settingOption('bench'))
    .action(async ({ broker, topic, bench, ...options }: ServeOptions) => {
      const { folder } = options;
      const publish = broker === undefined ? undefined : { broker, topic, bench };
      await serveUntilStopped({ mode: 'serve', ...options, publish }, (url) => {
        console.log(`Wayscribe is at ${url}`);
        console.log(`Recordings are kept in ${folder}. Ctrl-C ends it.`);
      });
    });
}
