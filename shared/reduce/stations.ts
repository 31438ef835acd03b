import type { AdjustedHeights } from '../adjust/adjusted.ts';
import { type Line, lineOf } from '../figures/line.ts';
import { lineReference } from '../figures/line-reference.ts';
import { planeReference } from '../figures/plane-reference.ts';
import { departuresFrom, type Reference } from '../figures/reference.ts';
import type { Result } from '../sheet/result.ts';
import type { Surveyed } from './surveyed.ts';

type Heights = Result['stations'];

/**
 * Every station's height, in the order of the sheet: on one line against the reference line, otherwise
 * against the plane through all stations, or, where the lines are not tied to each other, each line
 * against its own.
 */
export function stationsOf(
  { heights, lines, area, reference, planeReference: plane, isPlane, tiedThroughout }: Surveyed,
  results: Result['lines'],
): { heights: Heights; notes: string[] } {
  const all = Object.values(lines);
  if (!tiedThroughout) {
    return {
      heights: Object.assign({}, ...Object.values(results).map(({ stations }) => stations)),
      notes: ['No reading ties the lines to each other: each stands against its own reference.'],
    };
  }
  const [line] = all;
  if (line && all.length === 1 && !isPlane) {
    return {
      heights: against(heights, throughAll(heights, line, lineReference(reference, line))),
      notes: [],
    };
  }
  const notes =
    all.length > 1 && !isPlane
      ? [
          `The heights of all stations together are over their ${planeWords[plane]} plane; each line has its own line.`,
        ]
      : [];
  return { heights: against(heights, planeReference(plane, area)), notes };
}

const planeWords = { leastSquares: 'least-squares', minimumZone: 'minimum-zone' } as const;

function against(heights: AdjustedHeights, reference: Reference): Heights {
  const { heightUm, uUm } = departuresFrom(heights, reference);
  return Object.fromEntries(heights.names.map((name, k) => [name, { heightUm: heightUm[k]!, uUm: uUm[k]! }]));
}

/** A line's reference at every station: a reference is straight, so two of its stations tell all others. */
function throughAll(heights: AdjustedHeights, line: Line, reference: Reference): Reference {
  const last = line.stations.length - 1;
  const everywhere = heights.names.map((_, k) => k);
  const { alongMm } = lineOf(heights, [line.stations[0]!, ...everywhere, line.stations[last]!]);
  const [from, to] = [line.alongMm[0]!, line.alongMm[last]!];
  return {
    stations: everywhere,
    basis: reference.basis.map((b) =>
      Float64Array.from(
        everywhere,
        (k) => b[0]! + ((alongMm[k + 1]! - from) / (to - from)) * (b[last]! - b[0]!),
      ),
    ),
    parameters: reference.parameters,
  };
}
