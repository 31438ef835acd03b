import type { AdjustedHeights } from '../adjust/adjusted.ts';
import type { Area } from './area.ts';
import { barFigures } from './bar.ts';
import { bedFigures } from './bed.ts';
import { dovetailFigures, type Pins } from './dovetail.ts';
import type { Figures, Lines } from './figure.ts';
import { plateFigures } from './plate.ts';
import { slideFigures } from './slide.ts';
import { squareFigures } from './square.ts';

export type SurveyKind = 'way' | 'bed' | 'plate' | 'slide' | 'square' | 'bar' | 'dovetail' | 'network';

/**
 * The figures that belong to a kind of survey. A way has the straightness of its lines and a network its
 * heights, and no figures besides. `area` holds all stations.
 */
export function figuresOfKind(
  kind: SurveyKind,
  adjusted: AdjustedHeights,
  lines: Lines,
  area: Area,
  pins?: Pins,
): Figures {
  switch (kind) {
    case 'bed':
      return bedFigures(adjusted, lines);
    case 'plate':
      return plateFigures(adjusted, area);
    case 'slide':
      return slideFigures(adjusted, lines);
    case 'square':
      return squareFigures(adjusted, lines);
    case 'bar':
      return barFigures(adjusted, lines);
    case 'dovetail':
      return dovetailFigures(adjusted, lines, pins);
    case 'way':
    case 'network':
      return { figures: {}, notes: [] };
  }
}
