import type { AdjustedHeights } from '../adjust/adjusted.ts';
import { type Figure, type Figures, type Lines, parallelismOf, taperOf } from './figure.ts';

/**
 * Figures of a slide, for each line swept by an indicator that the slide carries: `<line>.parallelism`,
 * greatest minus least height over the travel, and `<line>.taper`, least-squares slope × travel; µm.
 * What is left after the taper is the line's straightness.
 */
export function slideFigures(adjusted: AdjustedHeights, lines: Lines): Figures {
  const figures: Record<string, Figure> = {};
  for (const [name, line] of Object.entries(lines)) {
    figures[`${name}.parallelism`] = parallelismOf(adjusted, line);
    figures[`${name}.taper`] = taperOf(adjusted, line);
  }
  return { figures, notes: [] };
}
