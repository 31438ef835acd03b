import type { AdjustedHeights } from '../adjust/adjusted.ts';
import { type Line, lineOf } from '../figures/line.ts';
import { lineReference } from '../figures/line-reference.ts';
import { meanLevel, planeReference } from '../figures/plane-reference.ts';
import { departuresFrom, type Reference } from '../figures/reference.ts';
import type { Result } from '../sheet/result.ts';
import type { Kind } from '../sheet/schema.ts';
import type { Surveyed } from './surveyed.ts';

type Heights = Result['stations'];

/**
 * Every station's height, in the order of the sheet: where all lie on one line, against the reference line,
 * otherwise against the plane through all stations, or, where the lines are not tied to each other, against the
 * reference of a line that the station is tied to, its own if it has one.
 */
export function stationsOf(kind: Kind, surveyed: Surveyed): { heights: Heights; notes: string[] } {
  const { heights, lines, area, planeReference: plane, isPlane, tiedThroughout } = surveyed;
  const all = Object.values(lines);
  if (kind === 'repeat') {
    return {
      heights: against(heights, meanLevel(area)),
      notes: ['Every reading is told less the mean of all.'],
    };
  }
  if (!tiedThroughout) {
    return {
      heights: againstLines(surveyed),
      notes: ['No reading ties the lines to each other: each stands against its own reference.'],
    };
  }
  // Beside the one line, heights lean as the unknown zeros do: only a plane is the same whatever these are.
  if (all.length === 1 && !isPlane && area.extent !== 'plane')
    return { heights: againstLines(surveyed), notes: [] };
  return {
    heights: against(heights, planeReference(plane, area)),
    notes: [
      `The heights of all stations are over their ${planeWords[plane]} plane${all.length > 0 ? '; each line by itself has its own reference' : ''}.`,
    ],
  };
}

const planeWords = { leastSquares: 'least-squares', minimumZone: 'minimum-zone' } as const;

function against(heights: AdjustedHeights, reference: Reference): Heights {
  const { heightUm, uUm } = departuresFrom(heights, reference);
  return Object.fromEntries(heights.names.map((name, k) => [name, { heightUm: heightUm[k]!, uUm: uUm[k]! }]));
}

function againstLines({ heights, lines, parts, lineReference: kind }: Surveyed): Heights {
  const all = Object.values(lines);
  const found = all.map((line) => against(heights, throughAll(heights, line, lineReference(kind, line))));
  const lineOfStation = new Map<number, number>();
  const lineOfPart = new Map<number, number>();
  all.forEach(({ stations }, index) => {
    for (const k of stations) if (!lineOfStation.has(k)) lineOfStation.set(k, index);
    const part = parts[stations[0]!]!;
    if (!lineOfPart.has(part)) lineOfPart.set(part, index);
  });
  return Object.fromEntries(
    heights.names.map((name, k) => {
      const line = lineOfStation.get(k) ?? lineOfPart.get(parts[k]!)!;
      return [name, found[line]![name]!];
    }),
  );
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
