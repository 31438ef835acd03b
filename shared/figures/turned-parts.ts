import type { AdjustedHeights } from '../adjust/adjusted.ts';
import { combine } from './combination.ts';
import { type Figures, figureOf, type Lines, taperOf } from './figure.ts';
import { travelMm } from './line.ts';
import { leastSquaresSlope, lineReference } from './line-reference.ts';
import { departureCombination } from './reference.ts';

/**
 * Collars turned at one setting, heights being their diameters: `taper`, least-squares slope × length, µm in diameter,
 * plus when the last is bigger; `axisSlope`, half of that to the length, µm/m: how the travel and the axis of the
 * spindle run apart in the plane of the tool (geometry: a diameter changes by twice what the tool moves away).
 */
export function collarsFigures(adjusted: AdjustedHeights, lines: Lines): Figures {
  const [line] = Object.values(lines);
  if (!line) return { figures: {}, notes: [] };
  return {
    figures: {
      taper: taperOf(adjusted, line),
      axisSlope: figureOf(adjusted, combine([500, leastSquaresSlope(line)]), 'um/m'),
    },
    notes: ['Diameters tell how axis and travel run in the plane of the tool; across it they tell nothing.'],
  };
}

/**
 * A face that was faced, heights over a straightedge across it from rim to rim: `hollow`, how far the middle lies below
 * the line through both rims, µm, minus when it stands proud; `crossSlideSquareness`, that over half the length, µm/m:
 * a cross slide out of square to the axis turns a cone (geometry).
 */
export function faceFigures(adjusted: AdjustedHeights, lines: Lines): Figures {
  const [line] = Object.values(lines);
  if (!line) return { figures: {}, notes: [] };
  const half = travelMm(line) / 2;
  const off = (k: number) => Math.abs(line.alongMm[k]! - line.alongMm[0]! - half);
  const middle = Array.from(line.stations, (_, k) => k).reduce((a, b) => (off(b) < off(a) ? b : a));
  const below = combine([-1, departureCombination(lineReference('ends', line), middle)]);
  return {
    figures: {
      hollow: figureOf(adjusted, below, 'um'),
      crossSlideSquareness: figureOf(adjusted, combine([1000 / half, below]), 'um/m'),
    },
    notes: [],
  };
}
