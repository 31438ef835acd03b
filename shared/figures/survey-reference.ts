import type { Area } from './area.ts';
import type { Lines } from './figure.ts';
import type { SurveyKind } from './figures-of-kind.ts';
import { lineReference } from './line-reference.ts';
import { planeReference } from './plane-reference.ts';
import type { Reference, ReferenceKind } from './reference.ts';

/** What the heights of all stations of a survey are shown against. */
export interface SurveyReference {
  readonly kind: ReferenceKind;
  readonly reference: Reference;
  /** True when it is a plane (or, for stations on one line in plan, the line instead of it). */
  readonly plane: boolean;
}

/**
 * One line that holds every station is shown against its own reference line, `ends` when none is wished.
 * Anything else, and every plate, is shown against the plane of all stations: least squares when none is
 * wished or `ends`, which a plane does not have.
 */
export function surveyReference(
  kind: SurveyKind,
  lines: Lines,
  area: Area,
  wished?: ReferenceKind,
): SurveyReference {
  const [line, ...others] = Object.values(lines);
  const onOneLine =
    line !== undefined && others.length === 0 && line.stations.length === area.stations.length;
  if (kind !== 'plate' && onOneLine) {
    const lineKind = wished ?? 'ends';
    return { kind: lineKind, reference: lineReference(lineKind, line), plane: false };
  }
  const planeKind = wished === 'minimumZone' ? 'minimumZone' : 'leastSquares';
  return { kind: planeKind, reference: planeReference(planeKind, area), plane: true };
}
