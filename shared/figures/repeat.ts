import type { AdjustedHeights } from '../adjust/adjusted.ts';
import { single } from './combination.ts';
import { type Figures, spreadOf } from './figure.ts';

/**
 * Repeat reading of a plate: `repeatReading`, the greatest minus the least reading of the gauge over all places, µm. It
 * tells how alike neighbouring places are (local agreement), and nothing of the flatness of the plate as a whole.
 */
export function repeatFigures(adjusted: AdjustedHeights): Figures {
  const readings = adjusted.names.map((_, k) => single(k));
  return {
    figures: { repeatReading: spreadOf(adjusted, readings, 'um') },
    notes: [
      'A repeat reading tells how alike the plate is from place to place; how flat it is as a whole it cannot tell.',
    ],
  };
}
