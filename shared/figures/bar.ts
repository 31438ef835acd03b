import type { AdjustedHeights } from '../adjust/adjusted.ts';
import { type Figure, type Figures, type Lines, slopeOf } from './figure.ts';

/**
 * Figures of a test bar in a spindle, one line for each plane: `<line>.slope`, least-squares slope of the
 * mean of the two half-turn sweeps, µm/m; plus when the bar rises towards the last station. The bar's own
 * error has been separated by the half turn.
 */
export function barFigures(adjusted: AdjustedHeights, lines: Lines): Figures {
  const figures: Record<string, Figure> = {};
  for (const [name, line] of Object.entries(lines)) figures[`${name}.slope`] = slopeOf(adjusted, line);
  return { figures, notes: [] };
}
