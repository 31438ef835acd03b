import { useMemo } from 'preact/hooks';
import type { Closure } from '../../../shared/figures/closures.ts';
import { type Placement, placementKey, placeWords } from '../../../shared/survey/plan.ts';
import { lengthText } from '../../words/length.ts';
import { nearestPlacement } from '../bed/nearest-placement.ts';
import { Dimension } from '../dimension.tsx';
import { ContourLines } from './contour-lines.tsx';
import type { HeightField } from './height-field.ts';
import { keepApart } from './keep-apart.ts';
import { latticeOf } from './lattice.ts';
import { PatternLines } from './pattern-lines.tsx';
import { middleOf, nameLabels, nextLabel } from './plan-labels.ts';
import type { PlanView, Point } from './plan-view.ts';
import { PlateLevel } from './plate-level.tsx';
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
  /** A tap on a placement. */
  onPick?(place: Placement): void;
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
  const { session, place, standsOn, lifted, stale, picked, suspect, onPick } = on;
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
  const contours = useMemo(
    () => (
      <g>
        <ContourLines view={view} lattice={fine(field)} steps={steps} />
        {truth && <ContourLines view={view} lattice={fine(truth)} steps={steps} kind="contour true" />}
      </g>
    ),
    [view, field, truth, steps],
  );
  const labels = keepApart([
    ...nextLabel(view, place, pointOf),
    ...nameLabels(view, session, closures, pointOf),
  ]);
  return (
    <div class="plate-plan" style={{ width: `${view.widthPx}px`, height: `${view.heightPx}px` }}>
      <TintCanvas view={view} field={field} steps={steps} />
      {/* biome-ignore lint/a11y/useKeyWithClickEvents: the keyboard's way to the same is Repeat with the arrow keys */}
      <svg
        width={view.widthPx}
        height={view.heightPx}
        viewBox={`0 0 ${view.widthPx} ${view.heightPx}`}
        role="img"
        class={onPick ? 'picks' : ''}
        onClick={(event) => {
          const tapped = onPick && nearestPlacement(session, pointOf, { x: event.offsetX, y: event.offsetY });
          if (tapped) onPick(tapped);
        }}
        aria-label={`Plate in plan, near edge below, ${plan.stations.length} stations on ${Object.keys(plan.lines).length} lines`}
      >
        <rect class="border" {...covered} />
        {contours}
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
