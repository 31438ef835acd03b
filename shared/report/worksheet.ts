import type { JobSurvey } from '../job/survey.ts';
import type { History } from './history.ts';
import { html, type Markup, table } from './html.ts';
import { capital, sized, sure } from './words.ts';

/** So few rounds leave room for two columns of readings. */
const FEW_COLUMNS = 3;

/** More rounds than this stand in a table of their own. */
const MOST_COLUMNS = 7;

/** Every reading that counts, as it was read, round beside round; what was taken and does not count, below. */
export function worksheet({ surface, surveys }: History): Markup {
  const parts = Array.from({ length: Math.ceil(surveys.length / MOST_COLUMNS) }, (_, k) =>
    surveys.slice(k * MOST_COLUMNS, (k + 1) * MOST_COLUMNS),
  );
  return html`<section class="sheet">
<h2>Worksheet: ${surface.name}</h2>
<p>Readings in ${[...new Set(surveys.map(unitOf))].join(' and ')}, as the instrument showed them; each is the mean of one take.</p>
${parts.map((part) => html`<div class="${columns(part)}">${readingTable(part)}</div>`)}
<h3>Heights that they come to, µm</h3>
${parts.map((part) => html`<div class="${columns(part)}">${heightTable(part)}</div>`)}
${leftOut(surveys)}
</section>`;
}

/** Two columns only where each has rows enough to be read as one. */
function columns(surveys: readonly JobSurvey[]): string {
  return surveys.length <= FEW_COLUMNS ? 'two-columns' : '';
}

function readingTable(surveys: readonly JobSurvey[]): Markup {
  const readings = surveys.map(readingsOf);
  const places = [...new Set(readings.flatMap((each) => [...each.keys()]))];
  return table(
    ['Reading', ...surveys.map(({ record }) => record.round)],
    places.map((place) => [place, ...readings.map((each) => each.get(place) ?? '')]),
    'figures dense',
  );
}

function heightTable(surveys: readonly JobSurvey[]): Markup {
  const names = [...new Set(surveys.flatMap(({ heights }) => heights.names))];
  return table(
    ['Station', ...surveys.map(({ record }) => record.round)],
    names.map((name) => [name, ...surveys.map(({ result }) => heightOf(result.stations[name]))]),
    'figures dense',
  );
}

function heightOf(found: { heightUm: number; uUm: number } | undefined): string {
  if (!found) return '';
  if (found.heightUm === 0 && found.uUm === 0) return '0';
  return `${sized({ value: found.heightUm, u: found.uUm })} ± ${sure(found.uUm)}`;
}

function readingsOf({ sheet }: JobSurvey): Map<string, string> {
  const read = (value: number | null) =>
    value === null ? 'skipped' : String(Number(value.toFixed(3))).replace('-', '−');
  return new Map([
    ...sheet.walks.flatMap(({ id, readings }) =>
      readings.map(([from, to, value]) => [`${id}: ${from}–${to}`, read(value)] as const),
    ),
    ...sheet.sweeps.flatMap(({ id, readings }) =>
      readings.map(([at, value]) => [`${id}: ${at}`, read(value)] as const),
    ),
  ]);
}

function unitOf({ sheet: { units, walks } }: JobSurvey): string {
  return (walks.length > 0 ? units.tilt : units.height).replaceAll('um', 'µm');
}

function leftOut(surveys: readonly JobSurvey[]): Markup | false {
  const lines = surveys.flatMap(({ record, session }) => [
    ...(session?.takes ?? []).flatMap(({ event, out }) =>
      out === undefined
        ? []
        : [
            `${capital(record.round)}: ${event.place.run} ${event.place.at.join('–')} read ${event.value}, not counted: ${out}.`,
          ],
    ),
    ...[...(session?.skipped.values() ?? [])].map(
      ({ place, reason }) =>
        `${capital(record.round)}: ${place.run} ${place.at.join('–')} skipped: ${reason}.`,
    ),
  ]);
  if (lines.length === 0) return false;
  return html`<h3>Taken and not counted</h3><ul>${lines.map((text) => html`<li>${text}</li>`)}</ul>`;
}
