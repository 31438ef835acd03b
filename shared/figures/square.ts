import type { AdjustedHeights } from '../adjust/adjusted.ts';
import { amount, sureTo } from '../words.ts';
import { type Figures, type Lines, slopeOf } from './figure.ts';
import { travelMm } from './line.ts';

const ARC_SECONDS_PER_MICRORADIAN = 0.648 / Math.PI;

/**
 * `squareness`: least-squares slope of the first line, swept along a square whose own error has been
 * separated by turning it, µm/m; plus when the metal comes nearer towards the last station. Said in arc
 * seconds and in µm over the blade as well.
 */
export function squareFigures(adjusted: AdjustedHeights, lines: Lines): Figures {
  const [line] = Object.values(lines);
  if (line === undefined) return { figures: {}, notes: [] };
  const squareness = slopeOf(adjusted, line);
  const { value, u } = squareness;
  const blade = travelMm(line) / 1000;
  const seconds = amount(value * ARC_SECONDS_PER_MICRORADIAN, u * ARC_SECONDS_PER_MICRORADIAN);
  return {
    figures: { squareness },
    notes: [
      `Out of square by ${amount(value * blade, u * blade)} µm over ${Math.round(1000 * blade)} mm (${seconds} arc seconds), ${sureTo(u * blade)}.`,
    ],
  };
}
