import { stat } from 'node:fs/promises';
import { Command } from 'commander';
import { WayscribeError } from '../../shared/errors.ts';
import { type JobVerdict, verifyJob } from '../job/verify-job.ts';
import { type VerifyReport, verifyRecording } from '../recording/verify.ts';
import { isRecording } from './input.ts';

/** `wayscribe verify FILE|JOB`: exit status 0 when nothing is wrong, 1 when something is. */
export function verifyCommand(): Command {
  return new Command('verify')
    .description('prove that a recording, or a whole job, is as it was written')
    .argument('<file>', 'a recording, or the folder of a job')
    .argument('[reports...]', 'reports of the job that lie elsewhere')
    .action(async (path: string, reports: string[]) => {
      const isFolder = await stat(path).then(
        (found) => found.isDirectory(),
        () => false,
      );
      const { sentences, sound } = isFolder ? await ofJob(path, reports) : await ofRecording(path);
      console.log(sentences.join('\n'));
      if (!sound) process.exitCode = 1;
    });
}

interface Told {
  readonly sentences: string[];
  readonly sound: boolean;
}

async function ofJob(path: string, reports: readonly string[]): Promise<Told> {
  const verdict = await verifyJob(path, reports);
  return { sentences: jobVerdictSentences(verdict), sound: verdict.problems.length === 0 };
}

async function ofRecording(path: string): Promise<Told> {
  const report = await verifyRecording(path);
  if (report.problems.some(({ line }) => line === 1) && (await isSheet(path))) {
    const what =
      'This is a sheet. It keeps no record of how it came about, so nothing in it can be verified.';
    return { sentences: [what], sound: false };
  }
  const { lines, problems, more } = report;
  if (problems.length + more >= lines && !(await isRecording(path))) {
    throw new WayscribeError(
      'recording.invalid',
      path,
      'this is not a recording: its first line does not begin {"recording":',
      'name a recording, or the folder of a job',
    );
  }
  return { sentences: verifySentences(report), sound: report.problems.length === 0 };
}

async function isSheet(path: string): Promise<boolean> {
  const { readSheet } = await import('./input.ts');
  return readSheet(path).then(
    () => true,
    () => false,
  );
}

/** What was found in a job, one sentence a line. */
export function jobVerdictSentences({ files, problems, link }: JobVerdict): string[] {
  const found = problems.map(
    ({ file, line, what }) => `${file}${line === undefined ? '' : ` line ${line}`}: ${what}.`,
  );
  if (found.length === 0) found.push('Every file of the job is as it was written.');
  return [...found, `${files.length} files.${link === null ? '' : ` Link of the last change: ${link}`}`];
}

/** The report in plain sentences, one a line. */
function verifySentences(report: VerifyReport): string[] {
  const { problems, more, lines, seq, closed, link } = report;
  const found = problems.map(({ line, seq, what }) => {
    return `Line ${line}${seq === undefined ? '' : ` (number ${seq})`}: ${what}.`;
  });
  if (more > 0) found.push(`${more} more lines are not as they were written.`);
  if (found.length === 0)
    found.push('Every line is as it was written, and every take is the mean of its readings.');
  const end = closed
    ? 'It is closed: its last line is the end of the session.'
    : 'It is open, not closed: whether lines were cut off at the end, nothing in the file can tell.';
  return [
    ...found,
    `${lines} ${lines === 1 ? 'line' : 'lines'}, ${seq} ${seq === 1 ? 'event' : 'events'}. ${end}`,
    `Link of the last sound line: ${link}`,
  ];
}
