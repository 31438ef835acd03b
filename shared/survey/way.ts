import type { Setup } from '../session/setup.ts';

/** A walk over the way: out from the start end, or back to it. */
export type WalkId = 'out' | 'back';

/**
 * One place of the level. `from` is always the foot nearer to the start end and `to` the far foot,
 * on the walk back as well, so the sign of a reading never depends on the direction of walking.
 */
export interface Placement {
  readonly walk: WalkId;
  readonly from: string;
  readonly to: string;
}

/** Name of station k, 0 at the start end. */
export function stationName(setup: Pick<Setup, 'prefix'>, k: number): string {
  return `${setup.prefix}${k}`;
}

/** All stations of the way in order, with their distance from the first one in mm. */
export function stationsOf(setup: Setup): { name: string; xMm: number }[] {
  return Array.from({ length: setup.stations }, (_, k) => ({
    name: stationName(setup, k),
    xMm: k * setup.baseMm,
  }));
}

/** Placements of one walk in the order in which they are walked. */
export function walkPlacements(setup: Setup, walk: WalkId): Placement[] {
  const out = Array.from({ length: setup.stations - 1 }, (_, k) => ({
    walk,
    from: stationName(setup, k),
    to: stationName(setup, k + 1),
  }));
  return walk === 'out' ? out : out.reverse();
}

/** Every placement of the plan for the walks that are on, in the order in which they are walked. */
export function planWay(setup: Setup, walks: readonly WalkId[]): Placement[] {
  return walks.flatMap((walk) => walkPlacements(setup, walk));
}

/** One text for one placement, to compare and to look up: `out:F4-F5`. */
export function placementKey(place: Placement): string {
  return `${place.walk}:${place.from}-${place.to}`;
}

/**
 * +1 when a positive reading of this walk means that the far foot is higher, −1 when it means the
 * contrary. Turned end for end for the walk back, a level changes its facing.
 */
export function facingOf(setup: Setup, walk: WalkId): 1 | -1 {
  const normal = setup.faces === 'far' ? 1 : -1;
  const turned = walk === 'back' && setup.back === 'turned';
  return turned ? (-normal as 1 | -1) : normal;
}
