import type { Planted } from '../../shared/session/planted.ts';
import type { Placement } from '../../shared/survey/plan.ts';
import type { Random } from './random.ts';
import type { World } from './world.ts';

/** What the instrument stands on when it is set down for the nth time, counted from 0: µm/m or µm. */
export type SetDown = (place: Placement, nth: number) => number;

const chipUmPerM = 45;
const driftUmPerM = 1.5;
const heatUmPerM = 30;

/**
 * A hand that makes one mistake, somewhere in the middle of the first walk. What is repeated later is done well, so that a
 * fault that was found can be put right. Only walks of a level can be spoilt so; every other survey is done well.
 */
export function plantedHand(planted: Planted, world: World, random: Random): SetDown {
  const [out] = world.plan.runs;
  const sound: SetDown = (place) => world.reading(place);
  if (out?.reads !== 'tilt' || planted === 'nothing') return sound;
  const steps = out.feet.length;
  const at = 2 + Math.floor(random.even() * Math.max(1, steps - 4));
  const spoils = (nth: number) => nth >= at && nth < steps;
  const stood = (nth: number, by: number): Placement => ({
    run: out.id,
    at: out.feet[Math.min(Math.max(nth + by, 0), steps - 1)]!,
  });
  switch (planted) {
    case 'chip':
      return (place, nth) => world.reading(place) + (nth === at ? chipUmPerM : 0);
    case 'drift':
      return (place, nth) => world.reading(place) + driftUmPerM * nth;
    case 'heat':
      return (place, nth) => world.reading(place) + heatUmPerM * (1 - Math.exp(-nth / 4));
    case 'turned':
      return (place, nth) => (spoils(nth) ? -1 : 1) * world.reading(place);
    case 'skipped':
      return (place, nth) => world.reading(spoils(nth) ? stood(nth, 1) : place);
    case 'doubled':
      return (place, nth) => world.reading(spoils(nth) ? stood(nth, -1) : place);
    case 'inverted':
      return (place) => -world.reading(place);
  }
}
