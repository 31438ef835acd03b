import type { StationDifference } from '../job/before-after.ts';
import { amount, side } from '../words.ts';
import { differencesOf, type History, limitOf } from './history.ts';
import { html, type Markup, table } from './html.ts';
import { planDrawing } from './plan-drawing.ts';
import { type ProfileOf, profileDrawing } from './profile-drawing.ts';
import { heightWord } from './scale.ts';
import { capital, overWhat, sized, sure } from './words.ts';

/** Heights of one surface before and after, drawn on one scale, and as a table. */
export function heightsOf(history: History, index: number): Markup {
  const { first, newest } = history;
  const all = differencesOf(first, newest);
  const comparedWith = Object.values(all).flat();
  return html`${Object.entries(all).map(([line, stations], k) => {
    if (stations.length === 0) {
      return html`<p>▲ ${line}: the two surveys have no stations in common, so they are not compared.</p>`;
    }
    const drawn =
      line === 'plane'
        ? plans(history, stations, index)
        : profile(history, line, { stations, comparedWith }, `profile-${index}-${k}`);
    return html`${drawn}${heightTable(history, stations)}`;
  })}`;
}

function profile(
  history: History,
  line: string,
  { stations, comparedWith }: Pick<ProfileOf, 'stations' | 'comparedWith'>,
  id: string,
): Markup {
  const { first, newest } = history;
  const { names, xMm, yMm } = newest.heights;
  const place = stations.map(({ name }) => names.indexOf(name));
  const start = place[0]!;
  return html`<figure>${profileDrawing({
    id,
    line: capital(line),
    title: `${line}, ${first.record.round} and ${newest.record.round}`,
    stations,
    comparedWith,
    alongMm: place.map((k) => Math.hypot(xMm[k]! - xMm[start]!, yMm[k]! - yMm[start]!)),
    before: first.record.round,
    after: first === newest ? null : newest.record.round,
    allowedUm: limitOf(history, `${line}.straightness`),
    reference: overWhat(newest),
  })}</figure>`;
}

/** Two plans with one scale of ink. */
function plans({ first, newest }: History, stations: readonly StationDifference[], index: number): Markup {
  const values = stations.flatMap(({ before, after }) => [before.value, after.value]);
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const one = (which: 'before' | 'after', round: string) => {
    const by = new Map(stations.map((station) => [station.name, station[which]]));
    return html`<figure>${planDrawing({
      id: `plan-${index}-${which}`,
      title: `Heights ${round}`,
      heights: newest.heights,
      mark: (name) => {
        const found = by.get(name);
        return found ? { ink: (found.value - low) / (high - low || 1), text: sized(found) } : null;
      },
    })}<figcaption>${`${capital(round)}: µm over ${overWhat(newest)}. Bare is low (${heightWord(Math.round(low))}), inked is high (${heightWord(Math.round(high))}); one scale for both rounds.`}</figcaption></figure>`;
  };
  return html`${one('before', first.record.round)}${first !== newest && one('after', newest.record.round)}`;
}

function heightTable({ first, newest }: History, stations: readonly StationDifference[]): Markup {
  if (first === newest) {
    return table(
      ['Station', `${first.record.round}, µm`, 'Sure to, µm'],
      stations.map(({ name, before }) => [name, worded(before.value, before.u), doubt(before.u)]),
      'figures dense',
    );
  }
  return table(
    [
      'Station',
      `${first.record.round}, µm`,
      'sure to',
      `${newest.record.round}, µm`,
      'sure to',
      'Difference, µm',
      'sure to',
    ],
    stations.map(({ name, before, after, difference }) => [
      name,
      worded(before.value, before.u),
      doubt(before.u),
      worded(after.value, after.u),
      doubt(after.u),
      difference.u === 0
        ? ''
        : difference.same
          ? 'same'
          : `${amount(difference.value, difference.u)} ${difference.value > 0 ? 'up' : 'down'}`,
      doubt(difference.u),
    ]),
    'figures dense',
  );
}

function worded(value: number, u: number): string {
  if (value === 0 && u === 0) return 'on it';
  const where = side(value, u);
  return where === 'level' ? 'level' : `${amount(value, u)} ${where}`;
}

/** A station that carries the reference has no doubt of its own. */
function doubt(u: number): string {
  return u === 0 ? '' : sure(u);
}
