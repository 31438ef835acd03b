import type { Closure } from '../../../shared/figures/closures.ts';
import { type Placement, placementKey, placeWords } from '../../../shared/survey/plan.ts';
import { amount } from '../../../shared/words.ts';
import { lengthText } from '../../words/length.ts';
import { Dimension } from '../dimension.tsx';
import { textWidth } from '../text-width.ts';
import { ContourLines } from './contour-lines.tsx';
import type { HeightField } from './height-field.ts';
import { keepApart, labelPx, type PlacedLabel } from './keep-apart.ts';
import { latticeOf } from './lattice.ts';
import { PatternLines } from './pattern-lines.tsx';
import { labelAt, type PlanView, type Point } from './plan-view.ts';
import { PlateLevel } from './plate-level.tsx';
import { namedStations } from './plate-names.ts';
import { coveredMm, type PlateSession } from './plate-session.ts';
import { TintCanvas } from './tint-canvas.tsx';
import type { TintSteps } from './tint-steps.ts';

export interface OnPlate {
  readonly session: PlateSession;
  /** The placement to make next; null when there is none. */
  readonly place: Placement | null;
  /** Where the level is drawn; null when it is off the plate. */
  readonly standsOn: Placement | null;
  readonly lifted: boolean;
  /** Nothing is heard of the level now. */
  readonly stale: boolean;
  /** The place that the person points at, to read it again. */
  readonly picked: Placement | null;
  /** The one reading that disagrees with the others. */
  readonly suspect: Placement | null;
}

interface PlatePlanProps extends OnPlate {
  readonly view: PlanView;
  readonly field: HeightField;
  readonly steps: TintSteps;
  readonly closures: readonly Closure[];
  /** The true shape of a simulated plate, when it is laid over. */
  readonly truth: HeightField | null;
}

/** The plate from above: ink by height, contours, the lines of the pattern, the level, and how the crossings close. */
export function PlatePlan({ view, field, steps, closures, truth, ...on }: PlatePlanProps) {
  const { session, place, standsOn, lifted, stale, picked, suspect } = on;
  const { setup, plan } = session;
  const places = new Map(plan.stations.map(({ name, xMm, yMm }) => [name, view.point(xMm, yMm)]));
  const pointOf = (name: string): Point => places.get(name) ?? view.point(0, 0);
  const standing = plan.runs.find(({ id }) => id === standsOn?.run);
  const ghost = place && standsOn && placementKey(place) !== placementKey(standsOn);
  const { plate, covered } = view;
  const fine = (of: HeightField) =>
    latticeOf(
      of,
      coveredMm(session),
      Math.max(8, Math.round(covered.width / 6)),
      Math.max(8, Math.round(covered.height / 6)),
    );
  const labels = keepApart([
    ...nextLabel(view, place, pointOf),
    ...nameLabels(view, session, closures, pointOf),
  ]);
  return (
    <div class="plate-plan" style={{ width: `${view.widthPx}px`, height: `${view.heightPx}px` }}>
      <TintCanvas view={view} field={field} steps={steps} />
      <svg
        width={view.widthPx}
        height={view.heightPx}
        viewBox={`0 0 ${view.widthPx} ${view.heightPx}`}
        role="img"
        aria-label={`Plate in plan, near edge below, ${plan.stations.length} stations on ${Object.keys(plan.lines).length} lines`}
      >
        <rect class="border" {...covered} />
        <ContourLines view={view} lattice={fine(field)} steps={steps} />
        {truth && <ContourLines view={view} lattice={fine(truth)} steps={steps} kind="contour true" />}
        <PatternLines view={view} session={session} place={place} pointOf={pointOf} />
        {labels.map(({ text, x, y, anchor, kind }) => (
          <text
            key={`${text} ${x}`}
            class={kind === 'live' ? 'over now' : 'over name'}
            x={x}
            y={y}
            text-anchor={anchor}
          >
            {text}
          </text>
        ))}
        <rect class="metal" {...plate} />
        {ghost && (
          <g class="ghost">
            {place.at.map((name) => (
              <rect key={name} x={pointOf(name).x - 7} y={pointOf(name).y - 7} width={14} height={14} />
            ))}
          </g>
        )}
        {standsOn && standing?.reads === 'tilt' && (
          <PlateLevel
            from={pointOf(standsOn.at[0])}
            to={pointOf(standsOn.at[1] ?? standsOn.at[0])}
            lifted={lifted}
            stale={stale}
            plusAt={standing.facing === 1 ? 'to' : 'from'}
          />
        )}
        {[...session.skipped.values()].map(({ seq, place: at }) => {
          const { x, y } = middleOf(at, pointOf);
          return (
            <path key={seq} class="skipped" d={`M${x - 6} ${y - 6}l12 12m0 -12l-12 12`}>
              <title>{`${placeWords(at)} skipped`}</title>
            </path>
          );
        })}
        {suspect && <Suspect at={middleOf(suspect, pointOf)} words={placeWords(suspect)} />}
        {picked && (
          <circle class="picked" cx={middleOf(picked, pointOf).x} cy={middleOf(picked, pointOf).y} r={26} />
        )}
        <Dimension
          fromPx={plate.x}
          toPx={plate.x + plate.width}
          yPx={view.heightPx - 6}
          text={`${lengthText(setup.lengthMm, setup.lengthUnit)} × ${lengthText(setup.widthMm, setup.lengthUnit)}`}
        />
      </svg>
    </div>
  );
}

function Suspect({ at: { x, y }, words }: { at: Point; words: string }) {
  return (
    <path class="triangle" d={`M${x} ${y - 11}l11 19h-22z`}>
      <title>{`${words} disagrees`}</title>
    </path>
  );
}

function middleOf({ at }: Placement, pointOf: (name: string) => Point): Point {
  const [a, b] = [pointOf(at[0]), pointOf(at[1] ?? at[0])];
  return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
}

/** The two feet to be set next, beside the level and inside the plate. */
function nextLabel(view: PlanView, place: Placement | null, pointOf: (name: string) => Point): PlacedLabel[] {
  if (!place) return [];
  const text = placeWords(place);
  const { x, y } = middleOf(place, pointOf);
  const [a, b] = [pointOf(place.at[0]), pointOf(place.at[1] ?? place.at[0])];
  const half = textWidth(text, labelPx, true) / 2;
  const { plate } = view;
  const steep = Math.abs(b.y - a.y) > Math.abs(b.x - a.x);
  const inside = x < plate.x + plate.width / 2 ? 1 : -1;
  const reach = 22 + half + Math.abs(b.x - a.x) / 2;
  const beside = steep ? { x: x + inside * reach, y: y + 4 } : { x, y: 0 };
  const up = Math.abs(b.y - a.y) / 2 + 20;
  const below = y < plate.y + plate.height / 2;
  return [
    {
      text,
      kind: 'live',
      anchor: 'middle',
      x: Math.min(Math.max(beside.x, plate.x + half + 4), plate.x + plate.width - half - 4),
      y: steep ? beside.y : below ? y + up + 10 : y - up,
    },
  ];
}

/** The stations that have names of their own, each with how it closes. */
function nameLabels(
  view: PlanView,
  session: PlateSession,
  closures: readonly Closure[],
  pointOf: (name: string) => Point,
): PlacedLabel[] {
  const closed = new Map(closures.map((closure) => [closure.station, closure]));
  const roomy = view.plate.width >= 460;
  return namedStations(session, closures).map(({ name, words }) => {
    const closure = closed.get(name);
    const text = [
      roomy && words ? `${name}, ${words}` : name,
      closure && `${amount(closure.closureUm, closure.uUm)} µm`,
    ]
      .filter(Boolean)
      .join('  ');
    return { ...labelAt(view, pointOf(name), text), kind: 'name' };
  });
}
