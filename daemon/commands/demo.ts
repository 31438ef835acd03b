import { Command, InvalidArgumentError, Option } from 'commander';
import { openBrowser } from './open-browser.ts';
import { demoFolder, folderOption, portOption, quietOption } from './options.ts';
import { serveUntilStopped } from './serving.ts';

interface DemoChoices {
  readonly folder: string;
  readonly port: number;
  readonly open: boolean;
  readonly pace: number;
}

const MOST_PACE = 100;

/** `wayscribe demo`: the same daemon with a simulated level on an invented machine. */
export function demoCommand(): Command {
  return new Command('demo')
    .description('walk an invented machine with a simulated level')
    .addOption(folderOption(demoFolder))
    .addOption(portOption())
    .addOption(quietOption())
    .addOption(paceOption())
    .action(async ({ open, ...options }: DemoChoices) => {
      await serveUntilStopped({ mode: 'demo', ...options }, (url) => {
        console.log(`The demo is at ${url}`);
        console.log('Its level and its machine are invented. Ctrl-C ends it.');
        if (open) openBrowser(url);
      });
    });
}

function paceOption(): Option {
  return new Option(
    '--pace <number>',
    'how many times faster than a person the instrument is moved and settles',
  )
    .default(1)
    .argParser((text) => {
      const pace = Number(text);
      if (text.trim() !== '' && pace >= 1 && pace <= MOST_PACE) return pace;
      throw new InvalidArgumentError(`It is a number from 1 to ${MOST_PACE}.`);
    });
}
