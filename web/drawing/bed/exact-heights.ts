import type { AdjustedHeights } from '../../../shared/adjust/adjusted.ts';
import type { PlannedStation } from '../../../shared/survey/plan.ts';

/** The true heights of a simulated part as an adjustment without any uncertainty, µm in any datum. */
export function exactHeights(
  stations: readonly PlannedStation[],
  truthUm: Readonly<Record<string, number>>,
): AdjustedHeights {
  const known = stations.filter(({ name }) => truthUm[name] !== undefined);
  return {
    names: known.map(({ name }) => name),
    xMm: Float64Array.from(known, ({ xMm }) => xMm),
    yMm: Float64Array.from(known, ({ yMm }) => yMm),
    heightUm: Float64Array.from(known, ({ name }) => truthUm[name]!),
    varianceUm2: new Float64Array(known.length),
    covarianceWith: () => new Float64Array(known.length),
  };
}
