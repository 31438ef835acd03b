import type { AdjustedHeights } from '../adjust/adjusted.ts';
import { type Area, areaOf } from '../figures/area.ts';
import { lineAlong, planeBelow } from '../figures/plane-reference.ts';
import { departureHeights, type Reference } from '../figures/reference.ts';
import { lineMetal } from './line-metal.ts';
import { type Metal, metalBetween, type TargetSpec, takenOff, wishedShape } from './metal.ts';
import { shiftedBelow } from './shifted.ts';

/**
 * What to scrape off a plate. A crown or hollow runs along x. `inUse` is the plane that heights are shown
 * against; a target of fixed tilt stays parallel to it, a free one rests under the middle of the metal.
 * Stations that lie on one line in plan are treated as that line.
 */
export function areaMetal(adjusted: AdjustedHeights, area: Area, inUse: Reference, spec: TargetSpec): Metal {
  if (area.extent === 'line') return lineMetal(adjusted, lineAlong(area), inUse, spec);
  const alongMm = Float64Array.from(area.stations, (k) => adjusted.xMm[k]!);
  const shape = wishedShape(spec, alongMm);
  const free = () => {
    const shaped = takenOff(adjusted, area.stations, shape);
    const surface = planeBelow(areaOf(shaped, area.stations));
    return { surface, aboveUm: departureHeights(shaped, surface) };
  };
  const target = spec.tilt === 'fixed' ? shiftedBelow(adjusted, inUse, shape) : free();
  const resting = planeBelow({ ...area, heightUm: area.heightUm.map((height) => -height) });
  return metalBetween(adjusted, target, resting, spec);
}
