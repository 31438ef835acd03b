import { barFigures } from '../figures/bar.ts';
import { bedFigures } from '../figures/bed.ts';
import { dovetailFigures } from '../figures/dovetail.ts';
import type { Figures } from '../figures/figure.ts';
import { plateFigures } from '../figures/plate.ts';
import { repeatFigures } from '../figures/repeat.ts';
import { slideFigures } from '../figures/slide.ts';
import { squareFigures } from '../figures/square.ts';
import { collarsFigures, faceFigures } from '../figures/turned-parts.ts';
import type { Sheet } from '../sheet/schema.ts';
import { toInternal } from '../units.ts';
import type { Surveyed } from './surveyed.ts';

/** The figures that belong to the kind of survey, and what has to be said with them. */
export function figuresOf(sheet: Sheet, { heights, lines, area }: Surveyed): Figures {
  switch (sheet.kind) {
    case 'bed':
      return bedFigures(heights, lines);
    case 'plate':
      return plateFigures(heights, area);
    case 'slide':
      return slideFigures(heights, lines);
    case 'square':
      return squareFigures(heights, lines);
    case 'bar':
      return barFigures(heights, lines);
    case 'dovetail':
      return dovetailFigures(heights, lines, pinsOf(sheet));
    case 'repeat':
      return repeatFigures(heights);
    case 'collars':
      return collarsFigures(heights, lines);
    case 'face':
      return faceFigures(heights, lines);
    case 'way':
    case 'network':
      return { figures: {}, notes: [] };
  }
}

function pinsOf({ pins, units }: Sheet) {
  if (!pins) return undefined;
  const { angleDeg, form } = pins;
  return { diameterMm: toInternal('length', pins.diameter, units.length), angleDeg, form };
}
