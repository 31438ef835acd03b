import type { AdjustedHeights } from '../adjust/adjusted.ts';
import { departureCombination, departureHeights, extremesOf, type Reference } from '../figures/reference.ts';
import type { Target } from './metal.ts';

/**
 * The target of fixed tilt: the wished shape (`shapeUm`, by station of the reference) laid on the reference as it lies
 * in the metal, and shifted down until it is nowhere above the metal. It touches at the station that stands lowest
 * against the two.
 */
export function shiftedBelow(adjusted: AdjustedHeights, reference: Reference, shapeUm: Float64Array): Target {
  const departures = departureHeights(adjusted, reference).map((height, i) => height - shapeUm[i]!);
  const { lowest } = extremesOf(departures);
  return {
    surface: {
      stations: reference.stations,
      basis: [...reference.basis, new Float64Array(reference.stations.length).fill(1)],
      parameters: [...reference.parameters, departureCombination(reference, lowest)],
    },
    aboveUm: departures.map((height) => height - departures[lowest]!),
  };
}
