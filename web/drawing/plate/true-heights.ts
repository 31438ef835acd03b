import { areaOf } from '../../../shared/figures/area.ts';
import { planeReference } from '../../../shared/figures/plane-reference.ts';
import { departureHeights } from '../../../shared/figures/reference.ts';
import type { Result } from '../../../shared/sheet/result.ts';
import { exactHeights } from '../bed/exact-heights.ts';
import type { PlateSession } from './plate-session.ts';

/**
 * The true heights of a simulated plate over the same plane as the result, µm, at the stations that are known; none before the
 * survey is one of a plate.
 * @param truthUm by station, µm, in any datum
 */
export function trueHeights(
  session: PlateSession,
  result: Result | null,
  truthUm: Readonly<Record<string, number>>,
): ReadonlyMap<string, number> {
  if (result?.kind !== 'plate') return new Map();
  const exact = exactHeights(
    session.plan.stations.filter(({ name }) => result.stations[name]),
    truthUm,
  );
  const kind = result.reference === 'minimumZone' ? 'minimumZone' : 'leastSquares';
  const heights = departureHeights(exact, planeReference(kind, areaOf(exact)));
  return new Map(exact.names.map((name, k) => [name, heights[k]!]));
}
