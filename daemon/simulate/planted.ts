import type { Planted } from '../../shared/session/planted.ts';
import { type Placement, placementKey, placementsOf } from '../../shared/survey/plan.ts';
import type { Random } from './random.ts';
import type { World } from './world.ts';

/** What the instrument stands on when it is set down for the nth time, counted from 0: µm/m or µm. */
export type SetDown = (place: Placement, nth: number) => number;

export interface PlantedHand {
  readonly setDown: SetDown;
  /** Where the mistake is made, or begins; null when it is everywhere or nowhere. */
  readonly at: Placement | null;
}

/** How large each fault is for a level, µm/m, and for an indicator, µm. */
const sizes = {
  tilt: { chip: 45, drift: 1.5, heat: 30, moved: 14 },
  height: { chip: 14, drift: 0.9, heat: 0, moved: 12 },
} as const;

/**
 * A hand that makes one mistake, somewhere in the middle of the first walk or sweep. What is set down there a second
 * time is done well, so that a fault that was found can be put right.
 * @param before where it was set down already
 */
export function plantedHand(
  planted: Planted,
  world: World,
  random: Random,
  before: readonly Placement[] = [],
): PlantedHand {
  const run = world.plan.runs.find(({ wanted }) => wanted)!;
  const along = placementsOf(run);
  const orderOf = new Map(along.map((place, k) => [placementKey(place), k]));
  const size = sizes[run.reads];
  const first = 2 + Math.floor(random.even() * Math.max(1, along.length - 4));
  const stood = new Set(before.map(placementKey));
  const sound = (place: Placement) => world.reading(place);
  const everywhere = (setDown: SetDown): PlantedHand => ({ setDown, at: null });
  /** Spoils the places from the first one on, or that one alone, the first time that the instrument stands there. */
  const somewhere = (alone: boolean, spoilt: (place: Placement, k: number) => number): PlantedHand => ({
    at: along[first]!,
    setDown(place) {
      const key = placementKey(place);
      const k = orderOf.get(key) ?? -1;
      const spoils = !stood.has(key) && (alone ? k === first : k >= first);
      stood.add(key);
      return spoils ? spoilt(place, k) : sound(place);
    },
  });
  const beside = (k: number) => sound(along[Math.min(Math.max(k, 0), along.length - 1)]!);
  switch (planted) {
    case 'nothing':
      return everywhere(sound);
    case 'chip':
      return somewhere(true, (place) => sound(place) + size.chip);
    case 'moved':
      return somewhere(false, (place) => sound(place) + size.moved);
    case 'turned':
      return somewhere(false, (place) => -sound(place));
    case 'skipped':
      return somewhere(false, (_, k) => beside(k + 1));
    case 'doubled':
      return somewhere(false, (_, k) => beside(k - 1));
    case 'drift':
      return everywhere((place, nth) => sound(place) + size.drift * nth);
    case 'heat':
      return everywhere((place, nth) => sound(place) + size.heat * (1 - Math.exp(-nth / 4)));
    case 'inverted':
      return everywhere((place) => -sound(place));
  }
}
