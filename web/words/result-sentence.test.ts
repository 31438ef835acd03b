import { expect, test } from 'vitest';
import { demoSetups } from '../../shared/session/demo-setups.ts';
import type { NewEvent } from '../../shared/session/events.ts';
import { fold } from '../../shared/session/fold.ts';
import type { SetupInput } from '../../shared/session/setup.ts';
import type { Placement } from '../../shared/survey/plan.ts';
import { headerOf, numbered, takeAt } from '../sample-session.ts';
import { surveyResult } from '../state/survey-result.ts';
import { shownFigures } from './figures.ts';
import { resultSentence } from './result-sentence.ts';

const indicator = { name: 'D', source: 'cable', port: 'p', profile: 'sum-frame', unit: 'um' } as const;
const level = { ...indicator, profile: 'line-decimal', unit: 'um/m', sigma: 0.3 } as const;

/** A survey of an exact shape, constructed: what each placement reads, and only so many of them. */
function said(setup: SetupInput, reading: (place: Placement) => number, most = Number.POSITIVE_INFINITY) {
  const header = headerOf(setup);
  const places = fold(header, []).placements.slice(0, most);
  const takes = places.map((place): NewEvent => takeAt(place, reading(place)));
  const session = fold(header, [...numbered(takes), { seq: 1000, t: 0, m: 0, type: 'end' }]);
  const survey = surveyResult(session, 'ends');
  const figures = survey ? shownFigures(session, survey, 'ends') : [];
  return { ...resultSentence(session, survey, 'ends'), figures };
}

const k = ({ at }: Placement) => Number(at[0].slice(1));

test('a bar points up, and to a side, over its length', () => {
  const { what, figures } = said(
    { ...demoSetups.bar, sagUm: 0, stations: 4, instrument: { ...indicator, sigma: 0.5 } },
    (place) => (place.at[0].startsWith('T') ? 8 : -4) * k(place),
  );
  expect(what).toBe(
    'Bar points up 24.0 µm over 300 mm, and points away from the indicator 12.0 µm over 300 mm.',
  );
  expect(figures.map(({ name, says }) => [name, says])).toEqual([
    ['top.slope', 'points up, 24.0 µm over 300 mm'],
    ['side.slope', 'points away from the indicator, 12.0 µm over 300 mm'],
  ]);
});

test('of a sense that counts the other way the words turn round', () => {
  const { what } = said(
    { ...demoSetups.bar, sagUm: 0, plus: 'low', planes: 'top', instrument: { ...indicator, sigma: 0.5 } },
    (place) => 8 * k(place),
  );
  expect(what).toBe('Bar points down 24.0 µm over 300 mm.');
});

test('a square leans, with the end that is high', () => {
  const { what, context } = said(
    { ...demoSetups.square, instrument: { ...indicator, sigma: 0.5 } },
    (place) => 2.1 * k(place),
  );
  expect(what).toBe('Knee to column leans 21 µm/m: upper end high.');
  expect(context).not.toMatch(/turned/);
});

test('what was not turned says that its own error is still in the figures', () => {
  const { context } = said({ ...demoSetups.square, instrument: indicator }, (place) => 2 * k(place), 4);
  expect(context).toMatch(/not turned, so its own error is still in these figures/);
});

test('a slide tells taper and rest apart', () => {
  const { what, figures } = said(
    { ...demoSetups.slide, faces: 'top', instrument: { ...indicator, sigma: 0.1 } },
    (place) => 2 * k(place),
  );
  expect(what).toBe('Top face tapers 12.00 µm over 600 mm: right end high.');
  expect(figures.map(({ name }) => name)).toEqual(['top.parallelism', 'top.taper', 'top.straightness']);
  expect(figures[2]?.value).toBeCloseTo(0, 9);
});

test('a dovetail says bigger and smaller, and what sizes cannot say', () => {
  const { what, context } = said(
    { ...demoSetups.dovetail, instrument: { ...indicator, sigma: 0.5 } },
    (place) => 67_300 - (k(place) === 2 ? 9 : 0) + (k(place) === 4 ? 4 : 0),
  );
  expect(what).toBe('Male dovetail: sizes differ by 13.0 µm, D4 biggest, D2 smallest.');
  expect(context).toMatch(/cannot say which flank/);
});

test('a bed says its wind by corner; half of it is a way', () => {
  // The rear way rises by 2 µm at every station, 200 mm apart, 320 mm behind the front one.
  const rise = (place: Placement) =>
    place.run === 'across' ? (2 * k(place)) / 0.32 : place.run.startsWith('rear') ? 10 : 0;
  const bed = { ...demoSetups.bed, instrument: level };
  const { what, figures } = said(bed, (place) => rise(place));
  expect(what).toMatch(/^In wind: R8 stands 16.0+ µm HIGH\. Front way straight/);
  expect(figures.map(({ name }) => name)).toEqual([
    'wind',
    'twist',
    'twistRate',
    'front.straightness',
    'rear.straightness',
  ]);
  expect(said(bed, (place) => rise(place), 8).what).toMatch(/^Front way straight/);
});

test('nothing, and too little', () => {
  expect(said({ ...demoSetups.slide, instrument: indicator }, () => 0, 0).what).toMatch(/nothing was read/);
  expect(said({ ...demoSetups.slide, instrument: indicator }, () => 0, 1).what).toMatch(/too little/);
});

const way = { ...demoSetups.way, stations: 5, lengthMm: 600, back: 'same', instrument: level } as const;

test('one step is no shape: the sentence says that too little was read to tell', () => {
  expect(said(way, () => 3, 1).what).toBe('Front way: too few readings to tell whether it is straight.');
});

test('of a walk back that was broken off, the part that nothing checks is told', () => {
  expect(said(way, () => 3, 6).context).toMatch(/none of them disagrees, but nothing checks 2 of them/);
  expect(said(way, () => 3).context).not.toMatch(/nothing checks/);
});
