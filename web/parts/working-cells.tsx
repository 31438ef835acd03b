import type { ComponentChildren } from 'preact';
import type { Session } from '../../shared/session/fold.ts';
import { takenRuns } from '../../shared/session/taken-runs.ts';
import { type Placement, placementKey, placementsOf, type TiltRun } from '../../shared/survey/plan.ts';
import { toInternal } from '../../shared/units.ts';
import type { Lit } from '../state/lit.ts';
import { usePage } from '../state/page.ts';
import type { Reference } from '../state/page-state.ts';
import type { SurveyResult } from '../state/survey-result.ts';
import { heightText } from '../words/signed.ts';

/** What every table of the working is drawn from. */
export interface Shown {
  readonly session: Session;
  readonly survey: SurveyResult | null;
  /** What the heights of the last column stand over. */
  readonly reference: Reference;
  readonly lit: Lit | null;
  /** How strongly each reading is lit, by `placementKey`. */
  readonly lights: ReadonlyMap<string, number>;
  /** What each reading counts in the height that is explained, µm for 1 µm/m or 1 µm; null when none is. */
  readonly weights: ReadonlyMap<string, number> | null;
}

/** The ground of what is lit: the stronger, the more it counts. */
export function litStyle(strength: number | undefined) {
  if (!strength || strength < 0.01) return {};
  const percent = Math.round(4 + 20 * strength);
  return { style: { background: `color-mix(in srgb, var(--print) ${percent}%, transparent)` } };
}

interface ReadingTapProps {
  readonly lit: Lit | null;
  readonly place: Placement;
  readonly children: ComponentChildren;
}

/** A reading that can be pressed, to see what checks it. */
export function ReadingTap({ lit, place, children }: ReadingTapProps) {
  const page = usePage();
  const pressed = lit?.is === 'reading' && placementKey(lit.place) === placementKey(place);
  return (
    <button
      type="button"
      class="tap"
      data-testid={`reading-${placementKey(place).replaceAll(' ', '-')}`}
      aria-pressed={pressed}
      onClick={() => page.change({ lit: { is: 'reading', place } })}
    >
      {children}
    </button>
  );
}

interface HeightTapProps {
  readonly lit: Lit | null;
  readonly is: Exclude<Lit, { is: 'reading' }>;
  readonly heightUm: number;
  readonly uUm: number;
  readonly decimals: number;
}

/** A height as all readings together make it, that can be pressed to see which those are. */
export function HeightTap({ lit, is, heightUm, uUm, decimals }: HeightTapProps) {
  const page = usePage();
  const name = is.is === 'across' ? is.pair.join('-') : is.station;
  return (
    <button
      type="button"
      class="tap"
      data-testid={`height-${name}`}
      aria-pressed={sameHeight(lit, is)}
      onClick={() => page.change({ lit: is })}
    >
      {heightText({ heightUm, uUm }, decimals)}
    </button>
  );
}

function sameHeight(lit: Lit | null, is: HeightTapProps['is']): boolean {
  if (is.is === 'height') return lit?.is === 'height' && lit.line === is.line && lit.station === is.station;
  return lit?.is === 'across' && lit.pair[0] === is.pair[0];
}

/** One step of a walk, its reading in µm/m as it was shown; null where it was not read. */
export interface Step {
  readonly from: string;
  readonly to: string;
  readonly readingUmPerM: number | null;
  readonly baseMm: number;
}

/** The steps of a walk in the order of its line, whichever way it was walked. */
export function stepsOf(session: Session, run: TiltRun): Step[] {
  const { unit, graduation } = session.setup.instrument;
  const where = new Map(session.plan.stations.map((station) => [station.name, station]));
  const names = session.plan.lines[run.line] ?? [];
  const taken = takenRuns(session).find((one) => one.run.id === run.id)?.takes ?? [];
  const along = placementsOf(run).sort((a, b) => names.indexOf(a.at[0]) - names.indexOf(b.at[0]));
  return along.map((place) => {
    const [from, to = from] = place.at;
    const [a, b] = [where.get(from), where.get(to)];
    const take = taken.find((one) => placementKey(one.place) === placementKey(place));
    return {
      from,
      to,
      readingUmPerM: take ? toInternal('tilt', take.value * graduation, unit) : null,
      baseMm: a && b ? Math.hypot(b.xMm - a.xMm, b.yMm - a.yMm) : 0,
    };
  });
}
