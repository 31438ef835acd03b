import { Command, CommanderError } from 'commander';
import { type ErrorCode, isWayscribeError } from '../../shared/errors.ts';
import { version } from '../program.ts';
import { completionCommand } from './completion.ts';
import { demoCommand } from './demo.ts';
import { doctorCommand } from './doctor.ts';
import { jobCommand } from './job.ts';
import { lessonCommand } from './lesson.ts';
import { listenCommand } from './listen.ts';
import { applySettingsFile } from './options.ts';
import { portsCommand } from './ports.ts';
import { profilesCommand } from './profiles.ts';
import { reduceCommand } from './reduce.ts';
import { replayCommand } from './replay.ts';
import { reportCommand } from './report.ts';
import { schemaCommand } from './schema.ts';
import { serveCommand } from './serve.ts';
import { serviceCommand } from './service.ts';
import { settingsCommand } from './settings.ts';
import { simulateCommand } from './simulate.ts';
import { verifyCommand } from './verify.ts';

/** Exit statuses besides 0. */
const FAILED = 1;
const BAD_INPUT = 2;

/** Errors that lie in what was given, not in the machine. */
const inputErrors: ReadonlySet<string> = new Set<ErrorCode>([
  'job.broken',
  'job.exists',
  'job.invalid',
  'job.notFound',
  'lesson.invalid',
  'recording.broken',
  'recording.invalid',
  'recording.notFound',
  'units.unknown',
  'profile.invalid',
  'settings.invalid',
]);

/** Runs one command to its end. Sets the exit status of the process when it does not go well. */
export async function run(args: readonly string[]): Promise<void> {
  ignoreClosedPipe();
  try {
    await cli().parseAsync(withCommand(args), { from: 'user' });
  } catch (error) {
    if (error instanceof CommanderError) {
      if (error.exitCode !== 0) process.exitCode = BAD_INPUT;
    } else if (isWayscribeError(error)) {
      console.error(oneLine(error.message));
      process.exitCode = isInputError(error.code) ? BAD_INPUT : FAILED;
    } else {
      throw error;
    }
  }
}

function cli(): Command {
  const command = new Command('wayscribe')
    .description(
      'Reads indicators and electronic levels from their cables, draws straightness, twist and wind of ' +
        'machine ways while they are measured, and keeps the record.',
    )
    .version(version)
    .exitOverride()
    .hook('preAction', (_, command) => applySettingsFile(command))
    // The suggestion comes on a line of its own; a message here is one line.
    .configureOutput({ outputError: (text, write) => write(`${oneLine(text)}\n`) });
  const commands = [
    serveCommand,
    demoCommand,
    replayCommand,
    lessonCommand,
    reduceCommand,
    portsCommand,
    listenCommand,
    profilesCommand,
    simulateCommand,
    schemaCommand,
    verifyCommand,
    jobCommand,
    reportCommand,
    settingsCommand,
    serviceCommand,
    doctorCommand,
    completionCommand,
  ];
  for (const make of commands) command.addCommand(inheriting(make(), command));
  return command.addHelpText(
    'after',
    `
Without a command, wayscribe serves.

It ends with 0 when all went well, with 1 when something failed or was found wrong,
and with 2 when what it was given can't be used.`,
  );
}

/** A command, and those below it, that end and complain as the whole program does. */
function inheriting(command: Command, above: Command): Command {
  command.copyInheritedSettings(above);
  for (const below of command.commands) inheriting(below as Command, command);
  return command;
}

/** `serve` is meant when no command is named. */
function withCommand(args: readonly string[]): string[] {
  const [first] = args;
  const about = ['-h', '--help', '-V', '--version'];
  const named = first !== undefined && (!first.startsWith('-') || about.includes(first));
  return named ? [...args] : ['serve', ...args];
}

function isInputError(code: ErrorCode): boolean {
  return code.startsWith('sheet.') || code.startsWith('adjust.') || inputErrors.has(code);
}

function oneLine(text: string): string {
  return text.trim().replace(/\s*[\r\n]+\s*/g, ' ');
}

/** `wayscribe reduce … | head` ends early, and that is no fault. */
function ignoreClosedPipe(): void {
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
  });
}
