import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { Command } from 'commander';
import { JobFolder } from '../job/job-folder.ts';
import { makeReport } from '../job/make-report.ts';
import { recordingError } from '../recording/file.ts';
import { byOption } from './options.ts';

/** `wayscribe report JOB`: one HTML file to read, print and keep. */
export function reportCommand(): Command {
  return new Command('report')
    .description('write the report of a job as one HTML file, to be printed or kept')
    .argument('<job>', 'the folder of a job')
    .option('--out <file>', 'where to write it (default: report.html in the folder of the job)')
    .addOption(byOption())
    .action(async (path: string, { out, by }: { out?: string; by: string }) => {
      const file = out ?? join(path, 'report.html');
      const text = await makeReport(await JobFolder.open(path), { by, at: new Date().toISOString() });
      await writeFile(file, text).catch((error) => {
        throw recordingError(error, file);
      });
      console.log(`The report is in ${file}. Open it in a browser, and print it from there.`);
    });
}
