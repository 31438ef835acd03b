import { blueOnSurvey, hingeShape } from '../job/blue.ts';
import { convergenceOf } from '../job/convergence.ts';
import { stationRuns } from '../job/station-runs.ts';
import { linesUnder } from '../job/survey.ts';
import { unlike } from '../job/unlike.ts';
import { sureTo } from '../words.ts';
import { convergenceDrawing } from './convergence-drawing.ts';
import { heightsOf } from './heights.ts';
import { figureOf, figureWords, type History, limitOf, mainFigureName, printsOf } from './history.ts';
import { html, type Markup, table } from './html.ts';
import { photoLink } from './photo-link.ts';
import { capital, dayOf, metalSentences, sized, sure, verdictSentences } from './words.ts';

/** All of one surface: drawing before and after, what was not alike, rounds, blue, conditions. */
export function surfaceSection(history: History, index: number): Markup {
  const { surface, first, newest, surveys } = history;
  const once = surveys.length === 1;
  return html`<section class="sheet surface">
<h2>${capital(surface.name)}</h2>
<p class="plain">${capital(first.record.round)}: ${metalSentences(first).join(' ')}
${!once && html`<br>${capital(newest.record.round)}: ${metalSentences(newest).join(' ')}`}
<br>${verdictSentences(newest).join(' ')}</p>
${heightsOf(history, index)}
${!once && notAlike(history)}
${conditions(history)}
${!once && rounds(history, index)}
${blue(history)}
</section>`;
}

function notAlike({ first, newest }: History): Markup {
  const found = unlike(first, newest);
  return html`<h3>What was not alike, ${first.record.round} and ${newest.record.round}</h3>
${
  found.length === 0
    ? html`<p>Nothing that is on record: stations, foot spacing, facing, supports, instrument, person and temperatures are the same.</p>`
    : table(
        ['', capital(first.record.round), capital(newest.record.round)],
        found.map(({ what, before, after }) => [capital(what), before, after]),
      )
}`;
}

function rounds(history: History, index: number): Markup {
  const { surveys, bites } = history;
  const name = mainFigureName(history);
  const figures = surveys.map(({ result }) => (name === null ? null : figureOf(result, name)));
  const known = surveys.flatMap((survey, k) =>
    figures[k] ? [{ name: survey.record.round, figure: figures[k]! }] : [],
  );
  const unit = known[0] && name !== null ? figures.find((figure) => figure)!.unit : '';
  const limit = name === null ? null : limitOf(history, name);
  return html`<h3>Round by round</h3>
${
  known.length > 1 &&
  html`<figure>${convergenceDrawing({
    id: `rounds-${index}`,
    title: capital(figureWords(name!)),
    rounds: known,
    limit,
  })}<figcaption>${capital(figureWords(name!))}, ${unit}, round by round. Bars: sure to (k = 2).</figcaption></figure>`
}
${
  limit !== null &&
  html`<p>${
    convergenceOf(
      known.map(({ figure }) => figure),
      limit,
    ).words
  }</p>`
}
${table(
  [
    'Round',
    'Day',
    name === null ? '' : capital(figureWords(name)),
    'Sure to',
    'Passes before it',
    'Bite really taken',
  ],
  surveys.map(({ record }, k) => {
    const figure = figures[k];
    const bite = k > 0 ? bites[k - 1] : null;
    const passes = history.passes[k]!.length;
    return [
      record.round,
      dayOf(record.at),
      figure ? `${sized(figure)} ${unit}` : '',
      figure ? `${sure(figure.u)} ${unit}` : '',
      k === 0 ? '' : passes === 0 ? 'none on record' : String(passes),
      bite ? `${sized({ value: bite.biteUm, u: bite.uUm })} µm, ${sureTo(bite.uUm)}` : '',
    ];
  }),
  'figures',
)}`;
}

function blue(history: History): Markup | false {
  const printed = printsOf(history);
  if (printed.length === 0) return false;
  return html`<h3>Blue and numbers</h3>
<p>Where a flat reference should have taken colour by the numbers (ink film 2.5 µm), beside where it did. Neither overrules the other.</p>
${table(
  ['Round', 'By the numbers', 'Blue showed', 'Points, coverage', 'Turns at', 'Together'],
  printed.map(({ survey, print }) => {
    const { stations, agree, causes } = blueOnSurvey(survey, print);
    const on = (key: 'expected' | 'shows') =>
      stationRuns(
        stations.filter((station) => station[key]).map(({ name }) => name),
        linesUnder(survey),
      ) || 'nowhere';
    return [
      survey.record.round,
      on('expected'),
      html`${on('shows')}<br><small>${print.against}${print.photo && html`, photo ${photoLink(print.photo.file)}`}</small>`,
      pointsOf(Object.values(print.stations)),
      hingesOf(print.hingesMm ?? [], survey.heights.xMm),
      agree ? 'agree' : html`▲ disagree. ${causes.join(' ')}`,
    ];
  }),
  'loose',
)}`;
}

function pointsOf(
  stations: readonly { pointsPerInch2?: number | undefined; coverage?: number | undefined }[],
): string {
  const range = (values: number[], digits: number, unit: string) =>
    values.length === 0 ? [] : [`${spread(values.map((value) => value.toFixed(digits)))} ${unit}`];
  const points = stations.flatMap(({ pointsPerInch2 }) => pointsPerInch2 ?? []);
  const share = stations.flatMap(({ coverage }) => (coverage === undefined ? [] : [100 * coverage]));
  return [...range(points, 0, 'per sq. inch'), ...range(share, 0, '%')].join('; ');
}

function spread(values: readonly string[]): string {
  const sorted = [...new Set(values)].sort((a, b) => Number(a) - Number(b));
  return sorted.length === 1 ? sorted[0]! : `${sorted[0]} to ${sorted.at(-1)}`;
}

function hingesOf(hingesMm: readonly number[], xMm: Float64Array): string {
  const shape = hingeShape(hingesMm, Math.min(...xMm), Math.max(...xMm));
  if (shape === null) return '';
  const says = { flat: 'as a flat one', crown: 'as a crowned one', hollow: 'as a hollow one' }[shape];
  return `${hingesMm.map((x) => Math.round(x)).join(' and ')} mm: ${says}`;
}

function conditions({ surveys }: History): Markup {
  const degrees = (value: number | undefined) => (value === undefined ? 'not noted' : `${value} °C`);
  return html`<h3>Conditions</h3>
${table(
  ['Round', 'Support', 'Iron', 'Air', 'By'],
  surveys.map(({ record, session }) => [
    record.round,
    session?.setup.support || 'not noted',
    degrees(session?.setup.partC),
    degrees(session?.setup.airC),
    session?.setup.operator || record.by,
  ]),
)}`;
}
