import type { AdjustedHeights } from '../adjust/adjusted.ts';
import { single } from '../figures/combination.ts';
import type { Line } from '../figures/line.ts';
import { departureHeights, type Reference } from '../figures/reference.ts';
import { lineBelow } from './line-below.ts';
import { type Metal, metalBetween, type TargetSpec, takenOff, wishedShape } from './metal.ts';
import { shiftedBelow } from './shifted.ts';

/**
 * What to scrape off one line. `inUse` is the reference that heights are shown against; a target of fixed
 * tilt stays parallel to it, a free one rests under the middle of the metal, wherever that tilts it.
 */
export function lineMetal(adjusted: AdjustedHeights, line: Line, inUse: Reference, spec: TargetSpec): Metal {
  const shape = wishedShape(spec, line.alongMm);
  const free = () => {
    const shaped = takenOff(adjusted, line.stations, shape);
    const surface = tangent(
      line,
      line.heightUm.map((height, i) => height - shape[i]!),
    );
    return { surface, aboveUm: departureHeights(shaped, surface) };
  };
  const target = spec.tilt === 'fixed' ? shiftedBelow(adjusted, inUse, shape) : free();
  const resting = tangent(
    line,
    line.heightUm.map((height) => -height),
  );
  return metalBetween(adjusted, target, resting, spec);
}

function tangent(line: Line, heightUm: Float64Array): Reference {
  const { stations, alongMm } = line;
  const {
    through,
    slope: [from, to],
  } = lineBelow(alongMm, heightUm);
  const run = alongMm[to]! - alongMm[from]!;
  return {
    stations,
    basis: [new Float64Array(stations.length).fill(1), alongMm.map((x) => x - alongMm[through]!)],
    parameters: [
      single(stations[through]!),
      { stations: [stations[from]!, stations[to]!], weights: [-1 / run, 1 / run] },
    ],
  };
}
