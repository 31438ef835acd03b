import type { AdjustedHeights } from '../adjust/adjusted.ts';
import { departureCombination, departureHeights, extremesOf, type Reference } from '../figures/reference.ts';

/**
 * The reference shifted down along the height until it lies nowhere above the heights: the target
 * whose tilt is fixed. It touches at the station that stands lowest against the reference.
 */
export function shiftedBelow(adjusted: AdjustedHeights, reference: Reference): Reference {
  const { lowest } = extremesOf(departureHeights(adjusted, reference));
  return {
    stations: reference.stations,
    basis: [...reference.basis, new Float64Array(reference.stations.length).fill(1)],
    parameters: [...reference.parameters, departureCombination(reference, lowest)],
  };
}
