import { Command, InvalidArgumentError, Option } from 'commander';
import { WayscribeError } from '../../shared/errors.ts';
import { changeText } from '../../shared/job/change-text.ts';
import { type JobChange, jobTargetSchema } from '../../shared/job/document.ts';
import { readStations } from '../../shared/job/station-runs.ts';
import { withdrawalOf } from '../../shared/job/withdrawal.ts';
import { JobFolder } from '../job/job-folder.ts';
import { stationsOf } from '../job/load.ts';
import { jobSentences } from './job-sentences.ts';
import { byOption } from './options.ts';

/** What is written into a job by hand: agreements, targets, passes, checks, notes, withdrawals; and the list of it. */
export const changeCommands: readonly (() => Command)[] = [
  agreeCommand,
  targetCommand,
  scrapedCommand,
  checkedCommand,
  noteCommand,
  withdrawCommand,
  changesCommand,
];

interface By {
  readonly by: string;
}

interface AgreeOptions extends By {
  readonly from?: string[];
  readonly limit: string[];
  readonly source: string;
}

function agreeCommand(): Command {
  return new Command('agree')
    .description('set what a surface is made from, and the limits that are agreed for it')
    .argument('<job>', 'the folder of a job')
    .argument('<surface>', 'the surface')
    .option('--from <surface...>', 'surfaces that it is made from')
    .option('--limit <figure=max...>', 'agreed limits, as "straightness=10": µm or µm/m', [])
    .option('--source <text>', 'where the limits come from', 'agreed for this job')
    .addOption(byOption())
    .action(async (path: string, surface: string, { from, limit, source, by }: AgreeOptions) => {
      const folder = await JobFolder.open(path);
      const stamp = stampOf(by);
      const known = folder.job.surfaces.get(surface);
      const madeFrom = from ?? known?.madeFrom.slice() ?? [];
      const limits = limit.map((text) => ({ ...parseLimit(text, surface), source }));
      await folder.add(
        ...(known && !from ? [] : [{ ...stamp, change: 'surface' as const, surface, madeFrom }]),
        ...(limits.length > 0 ? [{ ...stamp, change: 'limits' as const, surface, limits }] : []),
      );
      console.log(jobSentences(folder.job, { surveys: [], unreadable: [] }).join('\n'));
    });
}

/** "straightness=10" is meant of the line that bears the name of the surface. */
function parseLimit(text: string, surface: string): { figure: string; max: number } {
  const [figure = '', number = ''] = text.split('=');
  const max = Number(number);
  if (figure === '' || number.trim() === '' || !(max >= 0)) {
    throw new WayscribeError('job.invalid', '--limit', `"${text}" is no limit`, 'write straightness=10');
  }
  const ofLine = ['straightness', 'hollow', 'bulge'].includes(figure);
  return { figure: ofLine ? `${surface}.${figure}` : figure, max };
}

function scrapedCommand(): Command {
  return new Command('scraped')
    .description('note the passes that were scraped since the last survey')
    .argument('<job>', 'the folder of a job')
    .argument('<surface>', 'the surface')
    .argument('<pass...>', 'each pass as its stations: F0-F2,F9')
    .addOption(byOption())
    .action(async (path: string, surface: string, passes: string[], { by }: By) => {
      const folder = await JobFolder.open(path);
      const lines = await stationsOf(folder, surface);
      const stations = passes.map((pass) => stationsIn(pass, lines));
      await folder.add({ ...stampOf(by), change: 'passes', surface, passes: stations });
      const noted = passes.length === 1 ? '1 pass' : `${passes.length} passes`;
      console.log(`${noted} on ${surface} noted. Measure it again.`);
    });
}

/** Runs are understood where a survey has told which stations there are. */
function stationsIn(pass: string, lines: readonly (readonly string[])[] | null): string[] {
  const { stations, unknown } = readStations(pass, lines ?? []);
  return lines === null || unknown !== null ? pass.split(',').map((name) => name.trim()) : stations;
}

interface TargetOptions extends By {
  readonly shape: 'flat' | 'crown' | 'hollow';
  readonly crown?: number;
  readonly tilt: 'free' | 'fixed';
  readonly bite?: number;
  readonly stop?: number;
  readonly measureAfter?: number;
}

function targetCommand(): Command {
  return new Command('target')
    .description('set the wished shape of a surface and how it is scraped')
    .argument('<job>', 'the folder of a job')
    .argument('<surface>', 'the surface')
    .addOption(new Option('--shape <word>').choices(['flat', 'crown', 'hollow']).default('flat'))
    .option('--crown <µm>', 'height of the crown or depth of the hollow', number)
    .addOption(
      new Option('--tilt <word>', 'may it lie as it likes').choices(['free', 'fixed']).default('free'),
    )
    .option('--bite <µm>', 'what one pass takes off', number)
    .option('--stop <passes>', 'last passes that are left to the blue', number)
    .option('--measure-after <passes>', 'passes to take before it is measured again', number)
    .addOption(byOption())
    .action(async (path: string, surface: string, options: TargetOptions) => {
      const folder = await JobFolder.open(path);
      const parsed = jobTargetSchema.safeParse({
        shape: options.shape,
        crownUm: options.crown,
        tilt: options.tilt,
        biteUm: options.bite,
        stopPasses: options.stop,
        passesPerRound: options.measureAfter,
      });
      if (!parsed.success) {
        const [issue] = parsed.error.issues;
        throw new WayscribeError('job.invalid', issue!.path.join('.'), issue!.message, 'see --help');
      }
      await folder.add({ ...stampOf(options.by), change: 'target', surface, target: parsed.data });
      console.log(`The target of ${surface} is ${parsed.data.shape}, ${parsed.data.biteUm} µm a pass.`);
    });
}

function checkedCommand(): Command {
  return new Command('checked')
    .description('note that a surface was looked at again and stands, without a survey')
    .argument('<job>', 'the folder of a job')
    .argument('<surface>', 'the surface')
    .argument('<why>', 'how it was checked')
    .addOption(byOption())
    .action(async (path: string, surface: string, why: string, { by }: By) => {
      await (await JobFolder.open(path)).add({ ...stampOf(by), change: 'checked', surface, why });
      console.log(`${surface} is noted as checked.`);
    });
}

function noteCommand(): Command {
  return new Command('note')
    .description('write a note into a job')
    .argument('<job>', 'the folder of a job')
    .argument('<text>', 'the note')
    .addOption(byOption())
    .action(async (path: string, text: string, { by }: By) => {
      await (await JobFolder.open(path)).add({ ...stampOf(by), change: 'note', text });
      console.log('The note is in the job.');
    });
}

function withdrawCommand(): Command {
  return new Command('withdraw')
    .description('take a change back; it stays in the list with the reason')
    .argument('<job>', 'the folder of a job')
    .argument('<number>', 'number of the change, as `job changes` lists it', number)
    .argument('<reason>', 'why')
    .addOption(byOption())
    .action(async (path: string, of: number, reason: string, { by }: By) => {
      const folder = await JobFolder.open(path);
      await folder.add({ ...stampOf(by), change: 'withdrawn', of, reason });
      const was = folder.job.changes.find(({ no }) => no === of)!;
      console.log(`Withdrawn: ${of}, ${changeText(was)}.`);
    });
}

function changesCommand(): Command {
  return new Command('changes')
    .description('list every change of a job with its number')
    .argument('<job>', 'the folder of a job')
    .action(async (path: string) => {
      const { changes } = (await JobFolder.open(path)).job;
      console.log(
        changes.map((change) => changeLine(change, changes)).join('\n') || 'Nothing was written yet.',
      );
    });
}

function changeLine(change: JobChange, changes: readonly JobChange[]): string {
  const by = withdrawalOf(change, changes);
  const end = by ? `; withdrawn by ${by.no}` : '';
  return `${change.no}  ${change.at.slice(0, 10)}, ${change.by}: ${changeText(change)}${end}`;
}

function number(text: string): number {
  const value = Number(text);
  if (text.trim() !== '' && Number.isFinite(value)) return value;
  throw new InvalidArgumentError('It is a number.');
}

function stampOf(by: string): { at: string; by: string } {
  return { at: new Date().toISOString(), by };
}
