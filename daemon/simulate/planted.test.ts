import { describe, expect, test } from 'vitest';
import { demoSetups } from '../../shared/session/demo-setups.ts';
import { plantableIn } from '../../shared/session/planted.ts';
import { setupSchema } from '../../shared/session/setup.ts';
import { placementKey, placementsOf } from '../../shared/survey/plan.ts';
import { plantedHand } from './planted.ts';
import { seededRandom } from './random.ts';
import { demoScene } from './scenario.ts';
import { World } from './world.ts';

const kinds = Object.keys(demoSetups) as (keyof typeof demoSetups)[];

describe.each(kinds)('a fault planted in a survey of a %s', (kind) => {
  const setup = setupSchema.parse(demoSetups[kind]);
  const world = new World(setup, demoScene(setup));
  const runs = world.plan.runs.filter(({ wanted }) => wanted);
  const places = runs.flatMap(placementsOf);
  const first = placementsOf(runs[0]!).length;
  const off = (setDown: ReturnType<typeof plantedHand>['setDown']) =>
    places.map((place, nth) => Math.abs(setDown(place, nth) - world.reading(place)));

  test.each(plantableIn(setup))('%s spoils only what it should', (planted) => {
    for (let seed = 1; seed <= 20; seed += 1) {
      const { setDown, at } = plantedHand(planted, world, seededRandom(seed));
      const spoilt = off(setDown).flatMap((size, nth) => (size > 1e-9 ? [nth] : []));
      if (planted === 'nothing') expect(spoilt).toEqual([]);
      else expect(spoilt.length).toBeGreaterThan(0);
      expect(at === null).toBe(['nothing', 'drift', 'heat', 'inverted'].includes(planted));
      if (!at) continue;
      const where = places.findIndex((place) => placementKey(place) === placementKey(at));
      expect(where).toBeGreaterThan(1);
      expect(spoilt[0]).toBeGreaterThanOrEqual(where);
      expect(spoilt.at(-1)).toBeLessThan(first);
      if (planted === 'chip') expect(spoilt).toEqual([where]);
    }
  });

  test('where it stood before, it is set down well', () => {
    for (const planted of ['chip', 'turned', 'skipped', 'doubled', 'moved'] as const) {
      const { setDown } = plantedHand(planted, world, seededRandom(3));
      off(setDown);
      expect(Math.max(...off(setDown))).toBe(0);
      const afterwards = plantedHand(planted, world, seededRandom(3), places);
      expect(Math.max(...off(afterwards.setDown))).toBe(0);
    }
  });
});
