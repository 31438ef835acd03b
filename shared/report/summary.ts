import { differenceOf, type Measured } from '../job/before-after.ts';
import type { Job } from '../job/job.ts';
import { amount } from '../words.ts';
import { figureOf, figureWords, type History, listedFigures } from './history.ts';
import { html, type Markup, table } from './html.ts';
import { capital, dayOf, instrumentOf, methodOf, sized, sure, surfaceSentence } from './words.ts';

/** When, by whom and with which program a report was made. */
export interface Made {
  readonly at: string;
  readonly by: string;
  readonly program: string;
}

/** The first page: what the metal is like in plain words, then one row for every figure. */
export function summary(job: Job, histories: readonly History[], made: Made, jobLink: string): Markup {
  return html`<section class="sheet">
<h1>${job.head.part}</h1>
<p class="context">Measured and scraped, ${period(histories)}. Every figure is given with how far it is sure (k = 2, about 95 %).</p>
${histories.map(
  (history) =>
    html`<h2>${capital(history.surface.name)}</h2><p class="plain">${surfaceSentence(job, history)}</p>`,
)}
${histories.length === 0 && html`<p class="plain">Nothing was measured yet.</p>`}
<h2>What was found and what is left</h2>
${table(
  ['Item', 'Allowed', 'As found', 'Newest', 'Sure to', 'Change', 'Verdict'],
  [...histories.flatMap(rowsOf), ...rowsNotMeasured(job, histories)],
  'figures',
)}
${madeFrom(job)}
<h2>How it was measured</h2>
${table(
  ['Surface', 'Round', 'Day', 'By', 'Method', 'Instrument'],
  histories.flatMap(({ surveys }) =>
    surveys.map((survey) => [
      survey.record.surface,
      survey.record.round,
      dayOf(survey.record.at),
      survey.session?.setup.operator || survey.record.by,
      methodOf(survey),
      instrumentOf(survey),
    ]),
  ),
)}
${titleBlock(job, histories, made, jobLink)}
</section>`;
}

function period(histories: readonly History[]): string {
  const days = histories.flatMap(({ surveys }) => surveys.map(({ record }) => dayOf(record.at))).sort();
  const [from, to] = [days[0], days.at(-1)];
  if (from === undefined) return 'not yet';
  return from === to ? from : `${from} to ${to}`;
}

function rowsOf(history: History): (string | Markup)[][] {
  const { first, newest, surface } = history;
  return listedFigures(history).map((name) => {
    const [was, is] = [figureOf(first.result, name), figureOf(newest.result, name)];
    const agreed = surface.limits.find(({ figure }) => figure === name);
    const verdict = newest.result.verdicts.find(({ figure }) => figure === name);
    const unit = (is ?? was)?.unit ?? '';
    const change = was && is && first !== newest ? changeWords(was, is) : '';
    const allowed = agreed?.max ?? verdict?.limit;
    return [
      html`${capital(figureWords(name))}${agreed && html`<br><small>${agreed.source}</small>`}`,
      allowed === undefined ? '' : `${allowed} ${unit}`,
      was ? `${sized(was)} ${unit}` : 'not measured',
      is ? (first === newest ? 'the same survey' : `${sized(is)} ${unit}`) : 'not measured',
      is ? `${sure(is.u)} ${unit}` : '',
      change,
      verdict
        ? html`<strong>${verdict.verdict}</strong>`
        : allowed === undefined
          ? 'no limit'
          : 'not measured',
    ];
  });
}

/** What is agreed for surfaces that nobody has measured yet. */
function rowsNotMeasured(job: Job, histories: readonly History[]): (string | Markup)[][] {
  const measured = new Set(histories.map(({ surface }) => surface.name));
  return [...job.surfaces.values()]
    .filter(({ name }) => !measured.has(name))
    .flatMap(({ limits }) =>
      limits.map(({ figure, max, source }) => [
        html`${capital(figureWords(figure))}<br><small>${source}</small>`,
        String(max),
        ...Array<string>(4).fill(''),
        'not measured yet',
      ]),
    );
}

/** How much less or more there is of a fault; one that leans to the other side now is neither. */
function changeWords(was: Measured, is: Measured): string {
  const signed = differenceOf(was, is);
  if (signed.same) return 'same';
  if (was.value * is.value < 0) return `${amount(signed.value, signed.u)} over to the other side`;
  const size = ({ value, u }: Measured) => ({ value: Math.abs(value), u });
  const { value, u } = differenceOf(size(was), size(is));
  return `${amount(value, u)} ${value < 0 ? 'less' : 'more'}, sure to ${sure(u)}`;
}

function madeFrom(job: Job): Markup | false {
  const made = [...job.surfaces.values()].filter(({ madeFrom: from }) => from.length > 0);
  if (made.length === 0) return false;
  return html`<p>${made.map(({ name, madeFrom: from }) => `${capital(name)} was made from ${from.join(' and ')}. `)}</p>`;
}

/** After ISO 7200: owner, title, kind of document, number, by, date. */
function titleBlock(job: Job, histories: readonly History[], made: Made, jobLink: string): Markup {
  const newest = histories.map(({ surface, newest: { record } }) => `${surface.name}: ${record.round}`);
  const cell = (caption: string, text: string, wide = false) =>
    html`<div${wide && html` class="wide"`}><small>${caption}</small>${text}</div>`;
  return html`<div class="title-block">
${cell('Part', job.head.part, true)}
${cell('Owner', job.head.owner || 'not noted')}
${cell('Document', 'Report of measurement')}
${cell('Newest round', newest.join('; ') || 'none', true)}
${cell('Made by', made.by)}
${cell('Day of issue', dayOf(made.at))}
${cell('State of the record', `change ${job.changes.length}, link ${jobLink}`, true)}
${cell('Program', made.program)}
${cell('Units', 'heights µm, distances mm')}
</div>`;
}
