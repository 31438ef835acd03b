import { describe, expect, test } from 'vitest';
import { countOf } from '../shared/notice/reading.ts';
import { demoSetups } from '../shared/session/demo-setups.ts';
import type { SessionEvent } from '../shared/session/events.ts';
import { fold, type Session } from '../shared/session/fold.ts';
import type { SetupInput } from '../shared/session/setup.ts';
import { toSheet } from '../shared/session/to-sheet.ts';
import { placementKey } from '../shared/survey/plan.ts';
import { bedHeights } from '../web/drawing/bed/bed-heights.ts';
import { behindLit, weightsOf } from '../web/state/behind-lit.ts';
import type { Lit } from '../web/state/lit.ts';
import { surveyResult } from '../web/state/survey-result.ts';
import { whyHeight, whyReading } from '../web/words/why.ts';
import { readOnce } from './tools/read-once.ts';

/** Every height that can be pressed in the working, with what is shown of it. */
function pressed(session: Session): { lit: Exclude<Lit, { is: 'reading' }>; heightUm: number }[] {
  const survey = surveyResult(session, 'ends')!;
  const heights = survey.lines.flatMap(({ name, stations }) =>
    stations.map((station) => ({
      lit: { is: 'height', line: name, station: station.name } as const,
      heightUm: station.heightUm,
    })),
  );
  if (session.setup.kind !== 'bed') return heights;
  const { leans } = bedHeights(session, 'ends');
  const gaugeM = session.setup.gaugeMm / 1000;
  return [
    ...heights,
    ...leans.map(({ from, to, slopeUmPerM }) => ({
      lit: { is: 'across', pair: [from, to], against: [leans[0]!.from, leans[0]!.to] } as const,
      heightUm: slopeUmPerM * gaugeM,
    })),
  ];
}

const turnedAfter = (events: readonly SessionEvent[], k: number): SessionEvent[] => {
  const [before, after] = [events.slice(0, k), events.slice(k)];
  const seq = before.length + 1;
  return [
    ...before,
    { seq, t: 0, m: 0, type: 'turned', run: 'front way out', on: true },
    ...after.map((event) => ({ ...event, seq: event.seq + 1 })),
  ];
};
const driftOff = (events: readonly SessionEvent[]): SessionEvent[] => [
  ...events,
  { seq: events.length + 1, t: 0, m: 0, type: 'drift', off: true },
];

type Lasts = (events: readonly SessionEvent[]) => readonly SessionEvent[];
const asTaken: Lasts = (events) => events;
const short: SetupInput = { ...demoSetups.way, stations: 5, lengthMm: 600, back: 'same' };
const surveys: readonly (readonly [string, SetupInput, Lasts])[] = [
  ['way', short, asTaken],
  ['way, its level turned in mid-walk', short, (events) => turnedAfter(events, 2)],
  ['way, its drift taken off', short, driftOff],
  ['bed', { ...demoSetups.bed, stations: 4, lengthMm: 600 }, asTaken],
  ['plate', { ...demoSetups.plate, baseMm: 200 }, asTaken],
  ['slide', { ...demoSetups.slide, stations: 4 }, asTaken],
  ['straightedge', { ...demoSetups.straightedge, stations: 4 }, asTaken],
  ['square', demoSetups.square, asTaken],
  ['bar', { ...demoSetups.bar, stations: 3 }, asTaken],
  ['dovetail', demoSetups.dovetail, asTaken],
];

describe.each(surveys)('%s: pressed in the working', (name, input, lasts) => {
  const { header, events } = readOnce(input);
  const session = fold(header, lasts(events));
  const survey = surveyResult(session, 'ends')!;

  test('the walks of its sheet are those of the plan, unless it was turned or its drift taken off', () => {
    const planned = new Set(session.plan.runs.map(({ id }) => id));
    const strange = (toSheet(session).walks ?? []).filter(({ id }) => !planned.has(id));
    expect(strange.length).toBe(name.includes(',') ? 1 : 0);
  });

  test('a height moves by what each reading is said to count, and lights no other', () => {
    const heights = pressed(session);
    expect(heights.length).toBeGreaterThan(2);
    const weights = heights.map(({ lit }) => weightsOf(behindLit(session, survey, lit, 'ends')));
    const moved = new Set<string>();
    for (const changed of events) {
      const key = placementKey(changed.place);
      const more = events.map((event) =>
        event === changed ? { ...event, value: event.value + 1 / countOf(session.setup) } : event,
      );
      const after = pressed(fold(header, lasts(more)));
      heights.forEach(({ lit, heightUm }, k) => {
        expect(after[k]!.lit).toEqual(lit);
        const by = after[k]!.heightUm - heightUm;
        expect(weights[k]!.get(key), `${key} in ${JSON.stringify(lit)}`).toBeCloseTo(by, 6);
        if (Math.abs(by) > 1e-6) moved.add(key);
      });
    }
    expect(moved.size).toBe(events.length);
  });

  test('every height and every reading is explained in words', () => {
    for (const { lit } of pressed(session)) {
      const words = whyHeight(session, lit, behindLit(session, survey, lit, 'ends'));
      expect(words).toMatch(/readings make|by definition|held against/);
      expect(words).not.toMatch(/undefined|NaN|[{}]/);
    }
    for (const { place } of events) {
      const words = whyReading(session, survey.result, place).join(' ');
      expect(words).toMatch(/That is its residual|Nothing checks/);
      expect(words).not.toMatch(/undefined|NaN|[{}]/);
    }
  });
});
