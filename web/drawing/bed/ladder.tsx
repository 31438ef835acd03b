import { type Placement, placementKey } from '../../../shared/survey/plan.ts';
import { lengthText } from '../../words/length.ts';
import type { Across } from '../across.ts';
import { Dimension } from '../dimension.tsx';
import { fitText } from '../text-width.ts';
import type { BedHeights } from './bed-heights.ts';
import { GaugeDimension } from './gauge-dimension.tsx';
import { Picked, Skipped, Suspect } from './ladder-marks.tsx';
import { type BedSession, feetOf, ladderRows, placer } from './ladder-rows.ts';
import { LadderWays } from './ladder-ways.tsx';
import type { LeanScale } from './lean-scale.ts';
import { nearestPlacement } from './nearest-placement.ts';
import { PlanFeet, PlanLevel } from './plan-level.tsx';
import { Rungs } from './rungs.tsx';
import { WindMark } from './wind-mark.tsx';

export interface LadderProps {
  readonly session: BedSession;
  /** The placement to make next; null when there is none. */
  readonly place: Placement | null;
  /** Where the level is drawn; null when it is off the metal. */
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

interface Drawn extends LadderProps {
  readonly across: Across;
  readonly heights: BedHeights;
  readonly scale: LeanScale;
  /** How far the last rear corner stands out of the plane of the other three; null while it is not known. */
  readonly wind: { readonly valueUm: number; readonly uUm: number; readonly corner: string } | null;
}

const coarse = 18;

/** The bed in plan: two ways as a ladder with a rung at each cross reading, and the level on it. */
export function Ladder(props: Drawn) {
  const { across, session, heights, scale, wind, place, standsOn, lifted, stale, picked, suspect, onPick } =
    props;
  const { setup, plan } = session;
  const rows = ladderRows(across, setup.gaugeMm, wind ? 2 * coarse : coarse);
  const point = placer(across, rows, plan.stations);
  const cross = plan.runs.find(({ id }) => id === 'across');
  const rungs = (cross?.reads === 'tilt' ? cross.feet : []).map((at) => ({
    xMm: plan.stations.find(({ name }) => name === at[0])?.xMm ?? 0,
    read: session.counted.has(placementKey({ run: 'across', at })),
  }));
  const runOf = (at: Placement) => plan.runs.find(({ id }) => id === at.run);
  const busy = standsOn ?? place;
  const lineOf = busy && busy.run !== 'across' ? runOf(busy)?.line : undefined;
  const standing = standsOn && runOf(standsOn);
  const ghost = place && (!standsOn || placementKey(place) !== placementKey(standsOn));
  const [from, to] = standsOn ? feetOf(standsOn, point) : [];
  const [nextFrom, nextTo] = place ? feetOf(place, point) : [];
  const last = Math.max(...plan.stations.map(({ xMm }) => xMm));
  const room = (across.rightPx - across.leftPx) / 2 - 12;
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the keyboard's way to the same is Repeat with the arrow keys
    <svg
      width={across.widthPx}
      height={rows.heightPx}
      viewBox={`0 0 ${across.widthPx} ${rows.heightPx}`}
      role="img"
      class={onPick ? 'picks' : ''}
      onClick={(event) => {
        const tapped = onPick && nearestPlacement(session, point, { x: event.offsetX, y: event.offsetY });
        if (tapped) onPick(tapped);
      }}
      aria-label={`Bed in plan, ${setup.startEnd} at the left, ${setup.farEnd} at the right, ${setup.stations} stations on each way`}
    >
      <text x={across.leftPx} y={12}>
        {fitText(setup.startEnd, 12.5, room)}
      </text>
      <text x={across.rightPx} y={12} text-anchor="end">
        {fitText(setup.farEnd, 12.5, room)}
      </text>
      <Rungs across={across} rows={rows} rungs={rungs} leans={heights.leans} scale={scale} />
      {!rungs.some(({ read }) => read) && busy?.run !== 'across' && (
        <text
          class="over"
          x={(across.leftPx + across.rightPx) / 2}
          y={(rows.rearPx + rows.frontPx) / 2 + 4.5}
          text-anchor="middle"
        >
          not read across yet
        </text>
      )}
      <LadderWays
        across={across}
        rows={rows}
        session={session}
        now={place?.at ?? []}
        busyLine={lineOf}
        busyPx={busy ? feetOf(busy, point)[0].x : 0}
      />
      {wind && <WindMark across={across} rows={rows} at={point(wind.corner)} wind={wind} />}
      <GaugeDimension across={across} rows={rows} text={lengthText(setup.gaugeMm, setup.lengthUnit)} />
      <Dimension
        fromPx={across.px(0)}
        toPx={across.px(setup.baseMm)}
        yPx={rows.stepPx}
        text={lengthText(setup.baseMm, setup.lengthUnit)}
      />
      <Dimension
        fromPx={across.px(0)}
        toPx={across.px(last)}
        yPx={rows.totalPx}
        text={lengthText(last, setup.lengthUnit)}
      />
      <Skipped session={session} point={point} />
      {ghost && nextFrom && nextTo && <PlanFeet from={nextFrom} to={nextTo} />}
      {standing?.reads === 'tilt' && from && to && (
        <PlanLevel
          from={from}
          to={to}
          lifted={lifted}
          stale={stale}
          plusAt={standing.facing === 1 ? 'to' : 'from'}
        />
      )}
      {suspect && <Suspect place={suspect} point={point} />}
      {picked && <Picked place={picked} point={point} />}
    </svg>
  );
}
