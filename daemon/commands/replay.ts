import { Command } from 'commander';
import { streamRecording } from '../recording/reader.ts';
import { openBrowser } from './open-browser.ts';
import { folderOption, homeFolder, portOption, quietOption } from './options.ts';
import { serveUntilStopped } from './serving.ts';

/** `wayscribe replay FILE`: a recording, opened in the page, which plays it. */
export function replayCommand(): Command {
  return new Command('replay')
    .description('play a recording through the page')
    .argument('<file>', 'a recording')
    .addOption(folderOption(homeFolder))
    .addOption(portOption())
    .addOption(quietOption())
    .action(async (file: string, { folder, port, open }: { folder: string; port: number; open: boolean }) => {
      await proveReadable(file);
      await serveUntilStopped({ mode: 'serve', folder, port, replay: file }, (url) => {
        const page = `${url}#replayed`;
        console.log(`${file} is played at ${page}`);
        console.log('Ctrl-C ends it.');
        if (open) openBrowser(page);
      });
    });
}

/** Throws what is wrong with a file before anything is started for it. */
async function proveReadable(file: string): Promise<void> {
  const { groups } = await streamRecording(file, { skipReadings: true });
  for await (const _ of groups);
}
