import { Command } from 'commander';
import { WayscribeError } from '../../shared/errors.ts';
import { installService, removeService, serviceStatus } from '../service/keeping.ts';
import { ownLaunch } from '../service/launch.ts';
import { type Service, serviceFor } from '../service/service.ts';

/** `wayscribe service`: lets the daemon start with the machine. */
export function serviceCommand(): Command {
  const command = new Command('service').description('let Wayscribe start with this machine, for you alone');
  command
    .command('install')
    .description('write the service and start it; once more renews it')
    .action(async () => say(await installService(ownService())));
  command
    .command('remove')
    .description('stop the service and take it away; the recordings stay')
    .action(async () => say(await removeService(ownService())));
  command
    .command('status')
    .description('say whether it is there and runs; ends with 1 when it does not run')
    .action(async () => {
      const { sentences, runs } = await serviceStatus(ownService());
      say(sentences);
      if (!runs) process.exitCode = 1;
    });
  return command;
}

function ownService(): Service {
  const service = serviceFor(process.platform, ownLaunch(), process.env.XDG_CONFIG_HOME || undefined);
  if (service) return service;
  throw new WayscribeError(
    'service.failed',
    process.platform,
    'how services are kept here is not known',
    'start wayscribe serve by the means of this system',
  );
}

function say(sentences: readonly string[]): void {
  console.log(sentences.join('\n'));
}
