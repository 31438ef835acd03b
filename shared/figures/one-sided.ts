import type { AdjustedHeights } from '../adjust/adjusted.ts';
import { combine } from './combination.ts';
import { type Figure, figureOf } from './figure.ts';
import type { Line } from './line.ts';
import { lineReference } from './line-reference.ts';
import { departureCombination, departureHeights, extremesOf } from './reference.ts';

/**
 * How far a line lies below the line through its ends at its lowest station between them, µm; minus when
 * every one of them stands above. A line of two stations is hollow by 0.
 */
export function hollowOf(adjusted: AdjustedHeights, line: Line): Figure {
  return furthest(adjusted, line, -1);
}

/** How far a line stands above the line through its ends at its highest station between them, µm. */
export function bulgeOf(adjusted: AdjustedHeights, line: Line): Figure {
  return furthest(adjusted, line, 1);
}

function furthest(adjusted: AdjustedHeights, line: Line, sense: 1 | -1): Figure {
  const reference = lineReference('ends', line);
  const between = departureHeights(adjusted, reference).slice(1, -1);
  if (between.length === 0) return { value: 0, unit: 'um', u: 0 };
  const at = 1 + extremesOf(between.map((height) => sense * height)).highest;
  return figureOf(adjusted, combine([sense, departureCombination(reference, at)]), 'um');
}
