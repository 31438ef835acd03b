import { join } from 'node:path';
import { Command } from 'commander';
import type { Finding } from '../doctor/finding.ts';
import { packageFolder } from '../program.ts';
import type { defaultSettings, Settings } from '../settings/settings.ts';
import { folderOption, homeFolder, portOption, settingOption } from './options.ts';

/** `wayscribe doctor`: looks at everything that a survey needs; exit status 1 when something will not work. */
export function doctorCommand(): Command {
  return new Command('doctor')
    .description('look at what a survey needs of this computer, and say what to do')
    .addOption(folderOption(homeFolder))
    .addOption(portOption())
    .addOption(settingOption('broker'))
    .action(async ({ folder, port, broker }: Settings & typeof defaultSettings) => {
      const [here, { checkPorts }, { checkBroker, checkReach }] = await Promise.all([
        import('../doctor/here.ts'),
        import('../doctor/ports.ts'),
        import('../doctor/reach.ts'),
      ]);
      const findings = [
        here.checkNode(),
        await here.checkFolder(folder),
        await here.checkDisk(folder),
        await here.checkClock(folder),
        ...(await checkPorts()),
        here.checkPage(join(packageFolder, 'dist', 'web')),
        await checkReach(port),
        ...(await checkBroker(broker)),
      ];
      console.log(told(findings).join('\n'));
      if (findings.some(({ is }) => is === 'bad')) process.exitCode = 1;
    });
}

const marks = { good: 'good', mind: 'mind', bad: 'BAD ' };

function told(findings: readonly Finding[]): string[] {
  const lines = findings.flatMap(({ what, is, says, remedy }) => [
    `${marks[is]}  ${what}: ${says}`,
    ...(remedy ? [`      → ${remedy}`] : []),
  ]);
  const bad = findings.filter(({ is }) => is === 'bad').length;
  const sum = bad === 0 ? 'Everything that a survey needs is there.' : `${bad} of these must be put right.`;
  return [...lines, '', sum];
}
