import type { Job } from '../job/job.ts';
import type { OpenJob } from '../job/open.ts';
import { closing } from './closing.ts';
import { type Evidence, evidenceComment } from './evidence.ts';
import { historiesOf } from './history.ts';
import { html } from './html.ts';
import { scrapingPlans, wantsPlan } from './scraping-plan.ts';
import { reportStyle } from './style.ts';
import { type Made, summary } from './summary.ts';
import { surfaceSection } from './surface-section.ts';
import { drawingParts } from './svg.ts';
import { unreadableSentence } from './words.ts';
import { worksheet } from './worksheet.ts';

export type { Made } from './summary.ts';

/** One weight of the type, as it is put into the file. */
export interface Typeface {
  readonly weight: 400 | 700;
  readonly woff2Base64: string;
}

function faceRule({ weight, woff2Base64 }: Typeface): string {
  return `@font-face { font-family: B612; font-weight: ${weight}; src: url(data:font/woff2;base64,${woff2Base64}) format("woff2"); }\n`;
}

/**
 * The report of a job as one HTML file that needs nothing else, to be read, printed and kept. The same job gives the
 * same text, byte for byte, but for who made it and when. It ends with the evidence, and still lacks its seal.
 *
 * @param found all surveys of the job in its order: what they come to, or that they cannot be read
 * @param jobLink link of the last change of the job
 * @param typefaces what it is written in; without, whatever the reader has
 */
export function reportHtml(
  job: Job,
  { surveys, unreadable }: Pick<OpenJob, 'surveys' | 'unreadable'>,
  jobLink: string,
  made: Made,
  typefaces: readonly Typeface[] = [],
): string {
  const histories = historiesOf(job, surveys);
  const evidence: Evidence = {
    jobLink,
    changes: job.changes.length,
    files: [
      ...[...surveys, ...unreadable].map(({ record: { file, sha256, link } }) => ({ file, sha256, link })),
      ...job.photos.map(({ file, sha256 }) => ({ file, sha256, link: null })),
    ],
  };
  const { markup } = html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<title>${job.head.part}: report of measurement</title>
<style>${{ markup: reportStyle(job.head.part) + typefaces.map(faceRule).join('') }}</style>
</head>
<body>
${drawingParts}
<main>
${summary(job, histories, made, jobLink)}
${unreadable.map(({ record, problem }) => html`<p class="wrong">▲ ${unreadableSentence(record, problem)}</p>`)}
${histories.map((history, k) => surfaceSection(history, k))}
${histories.map(worksheet)}
${closing(job, histories, evidence)}
${histories.filter(wantsPlan).map((history, k) => scrapingPlans(history, k))}
</main>
</body>
</html>
`;
  return markup + evidenceComment(evidence);
}
