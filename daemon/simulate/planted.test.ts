import { describe, expect, test } from 'vitest';
import { demoSetups } from '../../shared/session/demo-setups.ts';
import { plantedFaults } from '../../shared/session/planted.ts';
import { setupSchema } from '../../shared/session/setup.ts';
import { placementsOf } from '../../shared/survey/plan.ts';
import { plantedHand } from './planted.ts';
import { seededRandom } from './random.ts';
import { demoScene } from './scenario.ts';
import { World } from './world.ts';

const setup = setupSchema.parse({ ...demoSetups.way, back: 'same' });
const world = new World(setup, demoScene(setup));
const places = world.plan.runs.flatMap(placementsOf);
const steps = places.length / 2;

describe('a planted fault', () => {
  test.each(plantedFaults)('%s spoils the first walk only as it should', (planted) => {
    for (let seed = 1; seed <= 20; seed += 1) {
      const hand = plantedHand(planted, world, seededRandom(seed));
      const off = places.map((place, nth) => Math.abs(hand(place, nth) - world.reading(place)));
      const spoilt = off.filter((size) => size > 1e-9).length;
      if (planted === 'nothing') expect(spoilt).toBe(0);
      if (planted === 'chip') expect(spoilt).toBe(1);
      if (planted === 'inverted') expect(spoilt).toBe(places.length);
      if (['turned', 'skipped', 'doubled'].includes(planted)) {
        expect(spoilt).toBeGreaterThan(0);
        expect(off.slice(steps).every((size) => size < 1e-9)).toBe(true);
        expect(off.slice(0, 2).every((size) => size < 1e-9)).toBe(true);
      }
    }
  });

  test('what is set down anew after the walks is read as it is', () => {
    for (const planted of ['chip', 'turned', 'skipped', 'doubled'] as const) {
      const hand = plantedHand(planted, world, seededRandom(3));
      for (const place of places) expect(hand(place, places.length + 1)).toBe(world.reading(place));
    }
  });
});
