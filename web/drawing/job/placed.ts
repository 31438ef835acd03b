import type { JobSurvey } from '../../../shared/job/survey.ts';

/** A station at its distance from the first of its line. */
export interface Placed {
  readonly name: string;
  readonly xMm: number;
}

/** The stations of a line of a survey, in their order. Those of a plate have no line: empty. */
export function placedOn({ sheet, heights }: JobSurvey, line: string): Placed[] {
  const at = new Map(heights.names.map((name, k) => [name, k]));
  const known = (sheet.lines[line] ?? []).flatMap((name) => {
    const k = at.get(name);
    return k === undefined ? [] : [{ name, x: heights.xMm[k]!, y: heights.yMm[k]! }];
  });
  const [first] = known;
  return first ? known.map(({ name, x, y }) => ({ name, xMm: Math.hypot(x - first.x, y - first.y) })) : [];
}

/** How far the stations reach, mm; never nothing. */
export function reachOf(stations: readonly Placed[]): number {
  return Math.max(1, ...stations.map(({ xMm }) => xMm));
}
