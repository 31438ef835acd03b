import { Command } from 'commander';
import { openBrowser } from './open-browser.ts';
import { demoFolder, folderOption, lanOption, portOption, quietOption } from './options.ts';
import { serveUntilStopped } from './serving.ts';

/** `wayscribe demo`: the same daemon with a simulated level on an invented machine. */
export function demoCommand(): Command {
  return new Command('demo')
    .description('walk an invented machine with a simulated level')
    .addOption(folderOption(demoFolder))
    .addOption(portOption())
    .addOption(lanOption())
    .addOption(quietOption())
    .action(async (options: { folder: string; port: number; lan: boolean; open: boolean }) => {
      const { open, ...rest } = options;
      await serveUntilStopped({ mode: 'demo', ...rest }, (url) => {
        console.log(`The demo is at ${url}`);
        console.log('Its level and its machine are invented. Ctrl-C ends it.');
        if (open) openBrowser(url);
      });
    });
}
