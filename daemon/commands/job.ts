import { readdir, writeFile } from 'node:fs/promises';
import { basename, join, resolve } from 'node:path';
import { Command } from 'commander';
import { isWayscribeError } from '../../shared/errors.ts';
import { addFile } from '../job/add-file.ts';
import { JobFolder } from '../job/job-folder.ts';
import { loadSurveys } from '../job/load.ts';
import { unzipJob } from '../job/unzip-job.ts';
import { verifyJob } from '../job/verify-job.ts';
import { zipJob } from '../job/zip-job.ts';
import { recordingError } from '../recording/file.ts';
import { changeCommands } from './job-changes.ts';
import { jobSentences } from './job-sentences.ts';
import { byOption, folderOption, homeFolder } from './options.ts';
import { jobVerdictSentences } from './verify.ts';

interface By {
  readonly by: string;
}

/** `wayscribe job …`: the surfaces of a machine from as found to as left. */
export function jobCommand(): Command {
  const command = new Command('job')
    .description('keep the surveys of one machine together, from as found to as left')
    .addCommand(newCommand())
    .addCommand(listCommand())
    .addCommand(showCommand())
    .addCommand(addCommand())
    .addCommand(zipCommand())
    .addCommand(openCommand());
  for (const make of changeCommands) command.addCommand(make());
  return command;
}

function newCommand(): Command {
  return new Command('new')
    .description('begin a job in a new folder')
    .argument('<job>', 'the folder')
    .requiredOption('--part <name>', 'machine or part')
    .option('--owner <name>', 'for whom the work is done', '')
    .action(async (path: string, { part, owner }: { part: string; owner: string }) => {
      await JobFolder.create(path, { part, owner });
      console.log(`${path} holds the job ${part}. Add surveys with \`wayscribe job add\`.`);
    });
}

function listCommand(): Command {
  return new Command('list')
    .description('list the jobs in a folder')
    .addOption(folderOption(homeFolder))
    .action(async ({ folder }: { folder: string }) => {
      const names = await readdir(folder).catch(() => []);
      const lines = (await Promise.all(names.sort().map((name) => lineOf(folder, name)))).filter(Boolean);
      console.log(lines.length > 0 ? lines.join('\n') : `There is no job in ${folder}.`);
    });
}

async function lineOf(folder: string, name: string): Promise<string> {
  try {
    const { job } = await JobFolder.open(join(folder, name));
    const surfaces = [...job.surfaces.values()].map(
      (surface) => `${surface.name} (${surface.rounds.at(-1)?.survey.round ?? 'not measured'})`,
    );
    return `${name}: ${job.head.part}; ${surfaces.join(', ') || 'no surface yet'}`;
  } catch (error) {
    if (isWayscribeError(error, 'job.notFound')) return '';
    if (isWayscribeError(error)) return `${name}: ${error.message}`;
    throw error;
  }
}

function showCommand(): Command {
  return new Command('show')
    .description('say how a job stands')
    .argument('<job>', 'the folder of a job')
    .action(async (path: string) => {
      const folder = await JobFolder.open(path);
      console.log(jobSentences(folder.job, await loadSurveys(folder)).join('\n'));
    });
}

interface AddOptions extends By {
  readonly surface?: string;
  readonly round?: string;
  readonly words?: string;
}

function addCommand(): Command {
  return new Command('add')
    .description('take a recording, a sheet or a photograph into a job')
    .argument('<job>', 'the folder of a job')
    .argument('<file>', 'a recording (.jsonl), a sheet (JSON or CSV) or a photograph')
    .option('--surface <name>', 'the surface; what the file says, unless told otherwise')
    .option('--round <name>', 'as found, in work 1, … as left; what the file says, unless told otherwise')
    .option('--words <text>', 'what a photograph shows')
    .addOption(byOption())
    .action(async (path: string, file: string, options: AddOptions) => {
      const folder = await JobFolder.open(path);
      await addFile(folder, file, { ...options, at: new Date().toISOString() });
      const { surface, round } = { surface: '', round: '', ...folder.job.changes.at(-1)! };
      console.log(`${basename(file)} is in the job${surface && `: ${surface}, ${round}`}.`);
    });
}

function zipCommand(): Command {
  return new Command('zip')
    .description('put a whole job into one file')
    .argument('<job>', 'the folder of a job')
    .option('--out <file>', 'where to write it (default: beside the folder)')
    .action(async (path: string, { out }: { out?: string }) => {
      await JobFolder.open(path);
      const file = out ?? `${resolve(path)}.zip`;
      const { bytes, files } = await zipJob(path);
      await writeFile(file, bytes).catch((error) => {
        throw recordingError(error, file);
      });
      console.log(`${files} files are in ${file}.`);
    });
}

function openCommand(): Command {
  return new Command('open')
    .description('lay a job that was put into one file into a folder of its own, and prove it')
    .argument('<archive>', 'a file that `job zip` or the page has made')
    .addOption(folderOption(homeFolder))
    .action(async (archive: string, { folder }: { folder: string }) => {
      const path = await unzipJob(archive, folder);
      const verdict = await verifyJob(path);
      console.log([`The job is in ${path}.`, ...jobVerdictSentences(verdict)].join('\n'));
      if (verdict.problems.length > 0) process.exitCode = 1;
    });
}
