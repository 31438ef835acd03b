import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { demoScene } from '../../daemon/simulate/scenario.ts';
import { World } from '../../daemon/simulate/world.ts';
import { notices } from '../../shared/notice/notices.ts';
import { demoSetups } from '../../shared/session/demo-setups.ts';
import type { Header, SessionEvent } from '../../shared/session/events.ts';
import { fold } from '../../shared/session/fold.ts';
import { resultOf } from '../../shared/session/result.ts';
import { type SetupInput, setupSchema } from '../../shared/session/setup.ts';
import { type Placement, placementsOf } from '../../shared/survey/plan.ts';
import { planFor } from '../../shared/survey/plan-for.ts';
import { judged } from './true-figures.ts';

const surveys: readonly SetupInput[] = [
  { ...demoSetups.way, stations: 5, lengthMm: 600, back: 'turned' },
  { ...demoSetups.bed, stations: 4, lengthMm: 600 },
  { ...demoSetups.plate, baseMm: 200, back: 'no' },
  { ...demoSetups.plate, baseMm: 200, back: 'no', zero: 'free' },
  { ...demoSetups.plate, baseMm: 300, pattern: 'grid' },
  { ...demoSetups.slide, stations: 4 },
  { ...demoSetups.straightedge, stations: 5 },
  demoSetups.square,
  demoSetups.bar,
  demoSetups.dovetail,
];

describe.each(surveys.map((input) => [input.kind, input] as const))('%s, broken off anywhere', (_, input) => {
  const setup = setupSchema.parse({ ...input, instrument: { ...input.instrument, sigma: 0.001 } });
  const plan = planFor(setup);
  const header: Header = { recording: 1, id: 'half-done', program: 'test', t: 0, setup };
  const world = new World(setup, demoScene(setup));
  const perUnit = setup.instrument.unit === 'mm' ? 1000 : 1;

  function foldOf(places: readonly Placement[]) {
    const events = places.map((place, k): SessionEvent => {
      const value = world.reading(place) / perUnit;
      const how = { spread: 0, readings: null, count: 1, by: 'typed', steadiness: null } as const;
      return { seq: k + 1, t: k, m: k, type: 'take', place, from: 'L', value, ...how };
    });
    return fold(header, events);
  }

  const all = plan.runs.filter(({ wanted }) => wanted).flatMap(placementsOf);

  test('in the order of the plan, every part of it has a result, and perfect readings suspect nobody', () => {
    for (let count = 1; count <= all.length; count += 1) {
      const session = foldOf(all.slice(0, count));
      if (!makesLine(all.slice(0, count))) continue;
      const result = resultOf(session);
      expect(Object.keys(result.lines).length).toBeGreaterThan(0);
      const warning = notices(session, result).filter(({ code, warns }) => warns && code !== 'foot-spacing');
      expect(warning, `after ${count}`).toEqual([]);
    }
  });

  test('in any order, what hangs together has a result, and it is true', () => {
    fc.assert(
      fc.property(fc.shuffledSubarray(all, { minLength: 1 }), (places) => {
        const session = foldOf(places);
        if (!makesLine(places)) return;
        const result = resultOf(session);
        notices(session, result);
        for (const [line, { stations }] of Object.entries(result.lines)) {
          const names = plan.lines[line]!.filter((name) => name in stations);
          const cut = { ...plan, lines: { [line]: names } };
          const seen = { ...result, figures: {} };
          for (const { name, value, truth } of judged(cut, world.truthUm(), seen)) {
            if (hasOwnError(places, line)) continue;
            expect(Math.abs(value - truth), name).toBeLessThan(1e-6);
          }
        }
      }),
      { numRuns: 60, seed: 20260302 },
    );
  });

  /** Two stations of one line that one reading, or one sweep, joins. */
  function makesLine(places: readonly Placement[]): boolean {
    return Object.values(plan.lines).some((names) =>
      plan.runs.some((run) => {
        const mine = places.filter((place) => place.run === run.id);
        return run.reads === 'tilt'
          ? mine.some(({ at }) => at.every((name) => names.includes(name)))
          : mine.filter(({ at }) => names.includes(at[0])).length >= 2;
      }),
    );
  }

  /** Until it is turned over on two stations at least, the artefact's own error is in the result. */
  function hasOwnError(places: readonly Placement[], line: string): boolean {
    const tips = (turned: boolean) =>
      new Set(
        places
          .filter(({ run }) => {
            const planned = plan.runs.find(({ id }) => id === run)!;
            return planned.line === line && planned.reads === 'height' && planned.artefact?.turned === turned;
          })
          .map(({ at }) => at[0]),
      );
    const [stands, turned] = [tips(false), tips(true)];
    return stands.size + turned.size > 0 && [...stands].filter((name) => turned.has(name)).length < 2;
  }
});
