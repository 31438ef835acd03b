import { Command } from 'commander';
import { openBrowser } from './open-browser.ts';
import { demoFolder, folderOption, portOption, quietOption } from './options.ts';
import { serveUntilStopped } from './serving.ts';

/** `wayscribe demo`: the same daemon with a simulated level on an invented machine. */
export function demoCommand(): Command {
  return new Command('demo')
    .description('walk an invented machine with a simulated level')
    .addOption(folderOption(demoFolder))
    .addOption(portOption())
    .addOption(quietOption())
    .action(async ({ folder, port, open }: { folder: string; port: number; open: boolean }) => {
      await serveUntilStopped({ mode: 'demo', folder, port }, (url) => {
        console.log(`The demo is at ${url}`);
        console.log('Its level and its machine are invented. Ctrl-C ends it.');
        if (open) openBrowser(url);
      });
    });
}
