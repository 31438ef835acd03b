import { isWayscribeError } from '../../shared/errors.ts';
import type { Session } from '../../shared/session/fold.ts';
import { resultOf } from '../../shared/session/result.ts';
import { lineName } from '../../shared/session/to-sheet.ts';
import type { Result } from '../../shared/sheet/result.ts';
import { placementKey, stationsOf } from '../../shared/survey/way.ts';
import type { Reference } from './page-state.ts';

/** What the readings so far come to. */
export interface SurveyResult {
  readonly result: Result;
  readonly line: Result['lines'][string];
  /** Stations with a height, in order along the way. */
  readonly stations: readonly ReducedStation[];
  /** Stations between which nothing was read, so that what lies beyond is left out. */
  readonly cutAt: string | null;
}

export interface ReducedStation {
  readonly name: string;
  readonly xMm: number;
  readonly heightUm: number;
  readonly uUm: number;
}

const remembered = new WeakMap<Session['counted'], Map<Reference, SurveyResult | null>>();

/** The reduction of what counts so far; null before the first take. Remembered per set of takes. */
export function surveyResult(session: Session, reference: Reference): SurveyResult | null {
  const known = remembered.get(session.counted) ?? new Map<Reference, SurveyResult | null>();
  remembered.set(session.counted, known);
  if (!known.has(reference)) known.set(reference, compute(session, reference));
  return known.get(reference) ?? null;
}

function compute(session: Session, reference: Reference): SurveyResult | null {
  if (session.counted.size === 0) return null;
  const { session: tied, cutAt } = tiedPart(session);
  try {
    const result = resultOf(tied, reference);
    const line = result.lines[lineName(session)];
    if (!line) return null;
    const stations = stationsOf(session.setup).flatMap((station) => {
      const height = line.stations[station.name];
      return height ? [{ ...station, ...height }] : [];
    });
    return { result, line, stations, cutAt };
  } catch (error) {
    if (isWayscribeError(error)) return null;
    throw error;
  }
}

/**
 * The session with only the longest unbroken run of steps that were read, out or back. Heights on the
 * two sides of a step that nobody read can't be compared.
 */
export function tiedPart(session: Session): { session: Session; cutAt: string | null } {
  const names = stationsOf(session.setup).map(({ name }) => name);
  const read = names
    .slice(0, -1)
    .map((from, k) =>
      session.walks.some((walk) => session.counted.has(placementKey({ walk, from, to: names[k + 1] ?? '' }))),
    );
  const runs: { start: number; end: number }[] = [];
  read.forEach((is, k) => {
    const last = runs.at(-1);
    if (is && last?.end === k) last.end = k + 1;
    else if (is) runs.push({ start: k, end: k + 1 });
  });
  if (runs.length <= 1) return { session, cutAt: null };
  const longest = runs.reduce((best, run) => (run.end - run.start > best.end - best.start ? run : best));
  const inside = new Set(names.slice(longest.start, longest.end + 1));
  const counted = new Map(
    [...session.counted].filter(([, { place }]) => inside.has(place.from) && inside.has(place.to)),
  );
  const gap = read.findIndex((is, k) => !is && k > runs[0]!.start && k < runs.at(-1)!.end);
  return { session: { ...session, counted }, cutAt: `${names[gap]}–${names[gap + 1]}` };
}
