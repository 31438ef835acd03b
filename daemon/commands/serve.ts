import { Command } from 'commander';
import { folderOption, homeFolder, lanOption, portOption, profilesOption } from './options.ts';
import { serveUntilStopped } from './serving.ts';

/** `wayscribe serve`: the daemon with real instruments. */
export function serveCommand(): Command {
  return new Command('serve')
    .description('listen to the instruments and serve the page (what happens without a command)')
    .addOption(folderOption(homeFolder))
    .addOption(portOption())
    .addOption(profilesOption())
    .addOption(lanOption())
    .action(async (options: { folder: string; port: number; profiles?: string; lan: boolean }) => {
      const { folder } = options;
      await serveUntilStopped({ mode: 'serve', ...options }, (url) => {
        console.log(`Wayscribe is at ${url}`);
        console.log(`Recordings are kept in ${folder}. Ctrl-C ends it.`);
      });
    });
}
