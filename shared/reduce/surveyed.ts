import type { Adjustment } from '../adjust/adjust.ts';
import type { AdjustedHeights } from '../adjust/adjusted.ts';
import { type Area, areaOf } from '../figures/area.ts';
import type { Lines } from '../figures/figure.ts';
import { lineOf } from '../figures/line.ts';
import type { PlaneReferenceKind } from '../figures/plane-reference.ts';
import type { Reference, Sheet } from '../sheet/schema.ts';

/** What was surveyed, ready for figures. */
export interface Surveyed {
  readonly heights: AdjustedHeights;
  readonly lines: Lines;
  readonly area: Area;
  /** What each line is shown against. */
  readonly lineReference: Reference;
  /** What a plane through all stations is. */
  readonly planeReference: PlaneReferenceKind;
  /** Whether the survey is of a plane rather than of lines. */
  readonly isPlane: boolean;
  /** Whether heights at all stations can be compared, or only along each line. */
  readonly tiedThroughout: boolean;
  /** The part that each station belongs to; stations of one part are tied together. */
  readonly parts: Int32Array;
}

export function surveyedOf(sheet: Sheet, { heights, parts }: Adjustment, asked?: Reference): Surveyed {
  const indexOf = new Map(heights.names.map((name, k) => [name, k]));
  const lines = Object.fromEntries(
    Object.entries(sheet.lines).map(([name, stations]) => [
      name,
      lineOf(
        heights,
        stations.map((station) => indexOf.get(station)!),
        `lines.${name}`,
      ),
    ]),
  );
  const planeReference = asked === 'minimumZone' ? 'minimumZone' : 'leastSquares';
  const isPlane = sheet.kind === 'plate' || Object.keys(lines).length === 0;
  return {
    heights,
    lines,
    area: areaOf(heights),
    lineReference: asked ?? 'ends',
    planeReference,
    isPlane,
    parts,
    tiedThroughout: parts.every((part) => part === 0),
  };
}
