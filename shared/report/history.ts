import {
  lineDifferences,
  type Measured,
  planeDifferences,
  type StationDifference,
} from '../job/before-after.ts';
import { type Bite, biteBetween } from '../job/bite.ts';
import type { Print } from '../job/blue.ts';
import type { Job, JobSurface } from '../job/job.ts';
import type { JobSurvey } from '../job/survey.ts';
import type { Result } from '../sheet/result.ts';

/** One surface from its first survey to its newest, as the report tells it. */
export interface History {
  readonly surface: JobSurface;
  readonly surveys: readonly [JobSurvey, ...JobSurvey[]];
  readonly first: JobSurvey;
  readonly newest: JobSurvey;
  /** The passes before each survey, since the one that stands before it in `surveys`. */
  readonly passes: readonly (readonly (readonly string[])[])[];
  /** What was learnt of the bite in each round; null where it cannot be told. One fewer than there are surveys. */
  readonly bites: readonly (Bite | null)[];
}

/** Every surface that was surveyed, in the order in which the job came to know them. */
export function historiesOf(job: Job, surveys: readonly JobSurvey[]): History[] {
  return [...job.surfaces.values()].flatMap((surface) => {
    const [first, ...later] = surveys.filter(({ record }) => record.surface === surface.name);
    if (!first) return [];
    const all: [JobSurvey, ...JobSurvey[]] = [first, ...later];
    const passes = all.map((survey, k) => passesBetween(surface, all[k - 1], survey));
    const bites = later.map((survey, k) => biteBetween(all[k]!.heights, survey.heights, passes[k + 1]!));
    return [{ surface, surveys: all, first, newest: all.at(-1)!, passes, bites }];
  });
}

/** A survey in between that cannot be read leaves its passes to the next one. */
function passesBetween({ rounds }: JobSurface, before: JobSurvey | undefined, after: JobSurvey) {
  const at = (survey: JobSurvey) => rounds.findIndex((round) => round.survey.no === survey.record.no);
  return rounds.slice(before ? at(before) + 1 : 0, at(after) + 1).flatMap((round) => round.passes);
}

/** Every print of a surface with the survey that it goes with: those of the recordings, and those of the job. */
export function printsOf({ surface, surveys }: History): { survey: JobSurvey; print: Print }[] {
  return surveys.flatMap((survey) => {
    const round = surface.rounds.find((each) => each.survey.no === survey.record.no);
    return [...(survey.session?.prints ?? []), ...(round?.prints ?? [])].map((print) => ({ survey, print }));
  });
}

/** A figure of a result by its name, as a limit names it; null when the survey does not make it. */
export function figureOf(result: Result, name: string): (Measured & { unit: string }) | null {
  const verdict = result.verdicts.find(({ figure }) => figure === name);
  const unit = unitOf(result, name);
  if (verdict) return { value: verdict.value, u: verdict.U / 2, unit };
  const line = name.endsWith('.straightness') ? result.lines[name.slice(0, -'.straightness'.length)] : null;
  if (line) {
    const { valueUm, uUm } = line.straightness[result.reference];
    return { value: valueUm, u: uUm, unit };
  }
  const figure = result.figures[name] ?? result.figures[`${name}.${result.reference}`];
  return figure ? { value: figure.value, u: figure.u, unit } : null;
}

/** What a figure may come to at most, as agreed for the job or else named in the newest survey; null without. */
export function limitOf({ surface, newest }: History, name: string): number | null {
  const agreed = surface.limits.find(({ figure }) => figure === name);
  const judged = newest.result.verdicts.find(({ figure }) => figure === name);
  return agreed?.max ?? judged?.limit ?? null;
}

function unitOf(result: Result, name: string): string {
  const figure = result.figures[name] ?? result.figures[`${name}.${result.reference}`];
  return (figure?.unit ?? 'um').replaceAll('um', 'µm');
}

/** Names of the figures that a report lists: those with a limit first, then what the kind of survey is about. */
export function listedFigures({ surface, newest, first }: History): string[] {
  const limited = surface.limits.map(({ figure }) => figure);
  const own = newest.result.verdicts.map(({ figure }) => figure);
  const { kind, lines, figures, reference } = first.result;
  const straight =
    kind === 'way' || kind === 'bed' ? Object.keys(lines).map((line) => `${line}.straightness`) : [];
  const chosen = (name: string) => !referenceEnding.test(name) || name.endsWith(`.${reference}`);
  const others = Object.keys(figures)
    .filter(chosen)
    .filter((name) => ![...limited, ...own].includes(name.replace(referenceEnding, '')));
  return [...new Set([...limited, ...own, ...straight, ...others])];
}

/**
 * The figure that a surface is about: of those that its newest survey makes, the first that is not within its limit,
 * or else the first. Null where none is made.
 */
export function mainFigureName(history: History): string | null {
  const { result } = history.newest;
  const made = listedFigures(history).filter((name) => figureOf(result, name) !== null);
  const judged = (verdict: Verdict) =>
    made.find((name) => result.verdicts.some((each) => each.figure === name && each.verdict === verdict));
  return judged('outside') ?? judged('cannot tell') ?? made[0] ?? null;
}
type Verdict = Result['verdicts'][number]['verdict'];

const referenceEnding = /\.(ends|leastSquares|minimumZone)$/;

/** "front way.straightness" as it is read: "straightness of front way"; "flatness.minimumZone": "flatness, minimum zone". */
export function figureWords(name: string): string {
  const dot = name.lastIndexOf('.');
  const words = (text: string) => text.replace(/([a-z])([A-Z])/g, '$1 $2').toLowerCase();
  if (dot < 0) return words(name);
  const [first, last] = [name.slice(0, dot), name.slice(dot + 1)];
  return referenceEnding.test(name) ? `${figureWords(first)}, ${words(last)}` : `${words(last)} of ${first}`;
}

const slopeCounts: ReadonlySet<string> = new Set(['slide', 'square', 'bar', 'dovetail', 'repeat', 'collars']);

/** What two surveys of a surface show station by station: by line, or `plane` for a plate. */
export function differencesOf(before: JobSurvey, after: JobSurvey): Record<string, StationDifference[]> {
  const { kind, reference } = after.result;
  if (kind === 'plate' || kind === 'network') {
    const plane = reference === 'minimumZone' ? 'minimumZone' : 'leastSquares';
    return { plane: planeDifferences(before.heights, after.heights, after.heights.names, plane) };
  }
  const against = slopeCounts.has(kind) ? 'level' : reference;
  return Object.fromEntries(
    Object.entries(after.sheet.lines).map(([line, names]) => [
      line,
      lineDifferences(before.heights, after.heights, names, against),
    ]),
  );
}
