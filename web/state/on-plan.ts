import type { Session } from '../../shared/session/fold.ts';
import { type Placement, placementKey, placementsOf, type Run } from '../../shared/survey/plan.ts';
import { placeNow } from './page-state.ts';

/** Where runs and placements lie on the plan of a session. */

export function runOf({ plan }: Session, id: string): Run | undefined {
  return plan.runs.find((run) => run.id === id);
}

/** The run that is being walked or swept: of the next placement, else of the last take, else the first. */
export function runNow(session: Session): Run | undefined {
  const place = placeNow(session);
  return (place && runOf(session, place.run)) ?? session.runs[0] ?? session.plan.runs[0];
}

/** The middle of a placement along the part, and across it, mm. */
export function middleOf({ plan }: Session, { at }: Pick<Placement, 'at'>): { xMm: number; yMm: number } {
  const stations = at.flatMap((name) => plan.stations.find((station) => station.name === name) ?? []);
  const mean = (values: number[]) =>
    values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
  return { xMm: mean(stations.map(({ xMm }) => xMm)), yMm: mean(stations.map(({ yMm }) => yMm)) };
}

/** +1 for a run that goes from the left to the right (or from the front to the back), −1 for the contrary. */
export function directionOf(session: Session, run: Run): 1 | -1 {
  const places = placementsOf(run);
  const [first, last] = [places[0], places.at(-1)];
  if (!first || !last) return 1;
  const [a, b] = [middleOf(session, first), middleOf(session, last)];
  return b.xMm - a.xMm || b.yMm - a.yMm ? (Math.sign(b.xMm - a.xMm || b.yMm - a.yMm) as 1 | -1) : 1;
}

/** The placements of a run from the left to the right, whichever way it goes. */
export function alongOf(session: Session, run: Run): Placement[] {
  const places = placementsOf(run);
  return directionOf(session, run) === 1 ? places : places.reverse();
}

/** Of a list of placements, the one whose middle is nearest to `to`. */
export function nearest(session: Session, places: readonly Placement[], to: Placement): Placement | null {
  const { xMm, yMm } = middleOf(session, to);
  const away = (place: Placement) => {
    const middle = middleOf(session, place);
    return Math.hypot(middle.xMm - xMm, middle.yMm - yMm);
  };
  return places.reduce<Placement | null>(
    (best, place) => (best && away(best) <= away(place) ? best : place),
    null,
  );
}

/** Stations where a foot or a tip has stood, in this run, for a reading that counts. */
export function readOn(session: Session, run: Run | undefined): ReadonlySet<string> {
  const read = run ? placementsOf(run).filter((place) => session.counted.has(placementKey(place))) : [];
  return new Set(read.flatMap(({ at }) => at));
}

/** A run of the plan that is not wanted so far and would check what was read: on the same line if there is one. */
export function addableRun(session: Session): Run | null {
  // The lines of a plate check each other where they cross.
  if (session.setup.kind === 'plate') return null;
  const wanted = new Set(session.runs.map(({ id }) => id));
  const addable = session.plan.runs.filter(({ id }) => !wanted.has(id));
  const line = runNow(session)?.line;
  const taken = session.takes.at(-1)?.event.place.run;
  const last = taken === undefined ? undefined : runOf(session, taken);
  const standsAlike = (run: Run) => positionOf(run) === positionOf(last) && run.line === last?.line;
  return addable.find(standsAlike) ?? addable.find((run) => run.line === line) ?? addable[0] ?? null;
}

/** Whether what a run is read against was turned over for it. */
function positionOf(run: Run | undefined): boolean | undefined {
  return run?.reads === 'height' ? run.artefact?.turned : undefined;
}

/** Whether a run does once more what was done already, and is not expected of anybody. */
export function isRepeat(run: Run): boolean {
  return run.reads === 'height' && run.again === true;
}

/** Where a station lies along the part, mm. */
export function stationsAlong({ plan }: Session, line: string): { name: string; xMm: number }[] {
  const known = new Map(plan.stations.map((station) => [station.name, station]));
  return (plan.lines[line] ?? []).flatMap((name) => known.get(name) ?? []);
}
