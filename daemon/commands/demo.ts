import { Command, InvalidArgumentError, Option } from 'commander';
import { openBrowser } from './open-browser.ts';
import { demoFolder, folderOption, lanOption, portOption, quietOption } from './options.ts';
import { serveUntilStopped } from './serving.ts';

interface Asked {
  readonly folder: string;
  readonly port: number;
  readonly lan: boolean;
  readonly open: boolean;
  readonly pace: number;
  readonly lesson?: string;
}

const MOST_PACE = 100;

/** `wayscribe demo`: the same daemon with a simulated level on an invented machine. */
export function demoCommand(): Command {
  return new Command('demo')
    .description('walk an invented machine with a simulated level')
    .addOption(folderOption(demoFolder))
    .addOption(portOption())
    .addOption(lanOption())
    .addOption(quietOption())
    .addOption(paceOption())
    .option('--lesson <id>', 'open that lesson; the first one is "clean-walk"')
    .action(async ({ open, lesson, ...rest }: Asked) => {
      await serveUntilStopped({ mode: 'demo', ...rest }, (url) => {
        const page = lesson === undefined ? url : `${url}#lesson=${encodeURIComponent(lesson)}`;
        console.log(`The demo is at ${page}`);
        console.log('Its level and its machine are invented.');
        console.log(`Recordings are kept in ${rest.folder}. Ctrl-C ends it.`);
        if (open) openBrowser(page);
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
