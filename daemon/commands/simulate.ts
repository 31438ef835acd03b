import { Command, InvalidArgumentError, Option } from 'commander';
import { type Fault, faults } from '../simulate/faults.ts';
import { folderOption, homeFolder, profilesOption } from './options.ts';
import { stopSignal } from './serving.ts';

interface SimulateOptions {
  readonly to: string;
  readonly every?: number;
  readonly fault: readonly Fault[];
  readonly seed: number;
  readonly folder: string;
  readonly profiles?: string;
}

/** `wayscribe simulate PROFILE --to PORT`: plays an instrument, for lessons and for tries without one. */
export function simulateCommand(): Command {
  return new Command('simulate')
    .description('play an instrument on a port or pseudo-terminal')
    .argument('<profile>', 'id of a profile')
    .requiredOption('--to <port>', 'port to speak on')
    .addOption(
      new Option('--every <ms>', 'time between two frames, when it is not asked').argParser(wholeNumber),
    )
    .addOption(
      new Option('--fault <name...>', 'faults to plant in turn, one every 25 frames')
        .choices(faults)
        .default([]),
    )
    .addOption(new Option('--seed <number>', 'seed of noise and damage').argParser(wholeNumber).default(1))
    .addOption(folderOption(homeFolder))
    .addOption(profilesOption())
    .action(async (id: string, options: SimulateOptions) => {
      const { loadProfiles, profilesFolder } = await import('../instruments/own-profiles.ts');
      const { realPort } = await import('../ports/real.ts');
      const { Speaker } = await import('../simulate/speaker.ts');
      const { every, fault, seed, to } = options;
      const { book } = await loadProfiles(profilesFolder(options));
      const profile = book.find(id);
      const speaker = new Speaker(profile, realPort(to), {
        faults: fault,
        seed,
        ...(every !== undefined && { everyMs: every }),
      });
      const stopped = stopSignal();
      speaker.said$.subscribe((said) => {
        if (said.fault) console.log(`Planted: ${said.fault}`);
      });
      speaker.line$.subscribe((error) =>
        console.log(
          error
            ? `Waiting for ${error.place}: ${error.detail}; ${error.remedy}. Ctrl-C ends it.`
            : `${profile.title}: spoken to ${to}. Every number is invented. Ctrl-C ends it.`,
        ),
      );
      await speaker.start();
      await stopped;
      await speaker.stop();
    });
}

function wholeNumber(text: string): number {
  const number = /^\d{1,9}$/.test(text) ? Number(text) : 0;
  if (number > 0) return number;
  throw new InvalidArgumentError('It is a whole number from 1.');
}
