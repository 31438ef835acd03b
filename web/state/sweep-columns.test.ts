import { expect, test } from 'vitest';
import { demoSetups } from '../../shared/session/demo-setups.ts';
import type { NewEvent } from '../../shared/session/events.ts';
import { fold } from '../../shared/session/fold.ts';
import type { SetupInput } from '../../shared/session/setup.ts';
import { headerOf, numbered, takeAt } from '../sample-session.ts';
import { surveyResult } from './survey-result.ts';
import { sweepColumns } from './sweep-columns.ts';

const um = { name: 'D', source: 'cable', port: 'p', profile: 'sum-frame', unit: 'um' } as const;

function swept(setup: SetupInput, reading: (run: string, name: string, k: number) => number) {
  const header = headerOf({ ...setup, instrument: um });
  const { placements } = fold(header, []);
  const takes = placements.map((place): NewEvent => {
    const k = Number(place.at[0].slice(1));
    return takeAt(place, reading(place.run, place.at[0], k));
  });
  return fold(header, numbered(takes));
}

test('half the sum of both positions is the metal, half their difference the bar (constructed)', () => {
  const metal = [-3, -1, 1, 3];
  const own = [2, -2, -2, 2];
  const session = swept({ ...demoSetups.bar, sagUm: 0, planes: 'top' }, (run, _, k) => {
    const turned = run.endsWith('turned');
    return (metal[k] ?? 0) + (turned ? -7 - (own[k] ?? 0) : 21 + (own[k] ?? 0));
  });
  const { columns, meanUm, artefactUm, sagUm } = sweepColumns(session, 'top');
  expect(columns.map(({ run }) => run.id)).toEqual(['top as it stands', 'top turned']);
  expect([...meanUm.values()]).toEqual(metal);
  expect([...(artefactUm?.values() ?? [])]).toEqual(own);
  expect(sagUm).toBeNull();
});

test.each(['slide', 'straightedge', 'bar', 'square', 'dovetail'] as const)(
  'a whole %s by hand is what all readings together say',
  (kind) => {
    const session = swept(demoSetups[kind], (run, name, k) => {
      const turned = run.endsWith('turned') ? -1 : 1;
      return 40 + 3 * k - 0.7 * k * k + turned * Math.sin(k) + (name.startsWith('S') ? k : 0);
    });
    const survey = surveyResult(session, 'ends');
    expect(survey?.lines.length).toBeGreaterThan(0);
    for (const line of survey?.lines ?? []) {
      const { meanUm } = sweepColumns(session, line.name);
      for (const { name, heightUm } of line.stations) expect(meanUm.get(name)).toBeCloseTo(heightUm, 6);
    }
  },
);
