import type { AdjustedHeights } from '../adjust/adjusted.ts';
import type { Line } from './line.ts';
import { lineReference } from './line-reference.ts';
import { type LineShape, shapeOfLine } from './line-shape.ts';
import { departuresFrom, type Reference, type ReferenceKind, rangeFrom } from './reference.ts';

/** How far a line is from straight: greatest minus least departure, µm, and the stations that define it. */
export interface Straightness {
  readonly valueUm: number;
  readonly uUm: number;
  readonly highest: string;
  readonly lowest: string;
}

/** A station's height against a reference, µm, plus = proud of it; u one standard deviation. */
export interface StationHeight {
  readonly heightUm: number;
  readonly uUm: number;
}

/** All that is said about one line. */
export interface LineFigures {
  readonly straightness: Readonly<Record<ReferenceKind, Straightness>>;
  readonly stations: Readonly<Record<string, StationHeight>>;
  readonly shape: LineShape;
}

/** Straightness against all references, heights against the `chosen` one, and the shape. */
export function lineFigures(adjusted: AdjustedHeights, line: Line, chosen: ReferenceKind): LineFigures {
  const references = {
    ends: lineReference('ends', line),
    leastSquares: lineReference('leastSquares', line),
    minimumZone: lineReference('minimumZone', line),
  };
  const fromEnds = departuresFrom(adjusted, references.ends);
  const shown = chosen === 'ends' ? fromEnds : departuresFrom(adjusted, references[chosen]);
  return {
    straightness: {
      ends: straightness(adjusted, references.ends),
      leastSquares: straightness(adjusted, references.leastSquares),
      minimumZone: straightness(adjusted, references.minimumZone),
    },
    stations: Object.fromEntries(
      Array.from(line.stations, (station, i) => [
        adjusted.names[station]!,
        { heightUm: shown.heightUm[i]!, uUm: shown.uUm[i]! },
      ]),
    ),
    shape: shapeOfLine(line.alongMm, fromEnds).word,
  };
}

function straightness(adjusted: AdjustedHeights, reference: Reference): Straightness {
  const range = rangeFrom(adjusted, reference);
  return {
    valueUm: range.valueUm,
    uUm: range.uUm,
    highest: adjusted.names[range.highest]!,
    lowest: adjusted.names[range.lowest]!,
  };
}
