import { hash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { sealComment } from '../../shared/report/evidence.ts';
import { reportHtml } from '../../shared/report/report.ts';
import { program } from '../program.ts';
import type { JobFolder } from './job-folder.ts';
import { loadSurveys } from './load.ts';

/** The sealed text of a report. It carries its type with it. */
export async function makeReport(folder: JobFolder, made: { by: string; at: string }): Promise<string> {
  const html = reportHtml(
    folder.job,
    await loadSurveys(folder),
    folder.link,
    { ...made, program },
    await typefaces(),
  );
  return html + sealComment(hash('sha256', html, 'hex'));
}

const require = createRequire(import.meta.url);

async function typefaces() {
  return Promise.all(
    ([400, 700] as const).map(async (weight) => {
      const file = require.resolve(`@fontsource/b612/files/b612-latin-${weight}-normal.woff2`);
      return { weight, woff2Base64: await readFile(file, 'base64') };
    }),
  );
}
