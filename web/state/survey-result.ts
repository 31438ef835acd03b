import { isWayscribeError } from '../../shared/errors.ts';
import type { Session } from '../../shared/session/fold.ts';
import { withPlanRuns } from '../../shared/session/plan-runs.ts';
import { resultOf } from '../../shared/session/result.ts';
import { toSheet } from '../../shared/session/to-sheet.ts';
import type { Result } from '../../shared/sheet/result.ts';
import { kindWords } from '../words/kinds.ts';
import { overMotion } from './over-motion.ts';
import type { Reference } from './page-state.ts';

/** What the readings so far come to. */
export interface SurveyResult {
  readonly result: Result;
  /** The lines that have a height, in the order of the plan. */
  readonly lines: readonly LineResult[];
  /** Two stations between which nothing was read, so that what lies beyond is left out. */
  readonly cutAt: string | null;
  /** What was assumed, corrected, left out, and not checked. */
  readonly notes: readonly string[];
}

/** One line of the survey, as it is drawn. */
export interface LineResult {
  readonly name: string;
  readonly figures: Result['lines'][string];
  /** Stations with a height, in order along the line. */
  readonly stations: readonly ReducedStation[];
}

export interface ReducedStation {
  readonly name: string;
  readonly xMm: number;
  readonly heightUm: number;
  readonly uUm: number;
}

const remembered = new WeakMap<Session['counted'], Map<string, SurveyResult | null>>();

/** The reduction of what counts so far; null before the first take. Remembered per set of takes and per choice. */
export function surveyResult(session: Session, reference: Reference): SurveyResult | null {
  const known = remembered.get(session.counted) ?? new Map<string, SurveyResult | null>();
  const choices = `${reference} ${session.driftOff}`;
  remembered.set(session.counted, known);
  if (!known.has(choices)) known.set(choices, compute(session, reference));
  return known.get(choices) ?? null;
}

function compute(session: Session, reference: Reference): SurveyResult | null {
  if (session.counted.size === 0) return null;
  const motion = kindWords[session.setup.kind].overMotion;
  try {
    const result = withPlanRuns(session, resultOf(session, motion ? 'leastSquares' : reference));
    const lines = Object.entries(result.lines).map(([name, figures]) => {
      const stations = session.plan.stations.flatMap((station) => {
        const height = figures.stations[station.name];
        return height ? [{ name: station.name, xMm: station.xMm, ...height }] : [];
      });
      return { name, figures, stations: stationsFor(session, result, name, stations) };
    });
    return { result, lines, cutAt: cutOf(session, result), notes: notesOf(session, result) };
  } catch (error) {
    if (isWayscribeError(error)) return null;
    throw error;
  }
}

/** The stations of a line as they are drawn: over the motion, or repeat readings less their mean. */
function stationsFor({ setup }: Session, result: Result, line: string, stations: ReducedStation[]) {
  if (setup.kind === 'repeat')
    return stations.map((station) => ({ ...station, ...result.stations[station.name] }));
  return kindWords[setup.kind].overMotion ? overMotion(result, line, stations) : stations;
}

function notesOf(session: Session, { notes }: Result): readonly string[] {
  const ofSheet = toSheet(session).notes;
  return ofSheet ? [ofSheet, ...notes] : notes;
}

/** The first step of a line that nobody read although what lies before and behind it was read. */
function cutOf(session: Session, { stations }: Result): string | null {
  const taken = [...session.counted.values()].flatMap(({ place }) => place.at);
  const loose = taken.filter((name) => stations[name] === undefined);
  if (loose.length === 0 || kindWords[session.setup.kind].reads === 'height') return null;
  const pair = (at: readonly string[]) => at.toSorted().join();
  const read = new Set([...session.counted.values()].map(({ place }) => pair(place.at)));
  for (const names of Object.values(session.plan.lines)) {
    const steps = names.slice(1).map((name, k) => [names[k] ?? name, name] as const);
    const [first, last] = [
      steps.findIndex((step) => read.has(pair(step))),
      steps.findLastIndex((step) => read.has(pair(step))),
    ];
    const cut = steps.find((step, k) => k > first && k < last && first >= 0 && !read.has(pair(step)));
    if (cut) return cut.join('–');
  }
  // In the middle of a survey a station that waits for its neighbours is no fault.
  return session.ended ? (loose[0] ?? null) : null;
}
