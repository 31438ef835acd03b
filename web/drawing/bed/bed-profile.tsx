import { useEffect, useRef } from 'preact/hooks';
import type { ReferenceKind } from '../../../shared/figures/reference.ts';
import { referenceWord } from '../../../shared/words.ts';
import type { ReducedStation } from '../../state/survey-result.ts';
import type { Across } from '../across.ts';
import { exaggeration, type HeightsAxis, heightLabel, heightsAxis } from '../heights-axis.ts';
import { HeightsTable } from '../heights-table.tsx';
import { useInk } from '../ink.ts';
import { createProfileChart, type ProfileChart } from '../profile-chart.ts';
import { box } from '../profile-grid.tsx';
import { textWidth } from '../text-width.ts';
import { thinLabels } from '../thin-labels.ts';
import { useSize } from '../use-size.ts';
import type { BedHeights } from './bed-heights.ts';
import type { BedSession } from './ladder-rows.ts';
import { lineLabels } from './line-labels.ts';

/** The band covers about 95 %, as the words "sure to" do. */
const coverage = 2;

export interface BedProfileProps {
  readonly across: Across;
  readonly session: BedSession;
  readonly reference: ReferenceKind;
  readonly heights: BedHeights;
  /** The true shape of a simulated bed over the same reference; null when it is not laid over. */
  readonly truth: BedHeights | null;
}

/** Both ways on one scale, straight beneath the ladder: the front one drawn through, the rear one dashed. */
export function BedProfile(props: BedProfileProps) {
  const { across, session, heights, truth } = props;
  const { ref, heightPx } = useSize<HTMLDivElement>();
  const all = [...heights.front, ...heights.rear];
  const values = [
    ...all.flatMap(({ heightUm, uUm }) => [heightUm + coverage * uUm, heightUm - coverage * uUm]),
    ...[...(truth?.front ?? []), ...(truth?.rear ?? [])].map(({ heightUm }) => heightUm),
  ];
  const largestU = Math.max(all.length < 3 ? 0.5 : 0.1, ...all.map(({ uUm }) => uUm));
  const mean = all.reduce((sum, { heightUm }) => sum + heightUm, 0);
  const lines = Math.max(3, Math.min(8, Math.floor(heightPx / 30)));
  const axis = heightsAxis(values, largestU, lines, mean > 0 ? 'above' : 'below');
  const pxPerUm = heightPx / (axis.maxUm - axis.minUm);
  return (
    <>
      <p class="caption-line">
        {captionText(props)} Drawn {exaggeration(Math.max(pxPerUm, 1e-9), across.pxPerMm)} × too high.
        {truth && ' Rings and dots: the true shape of the simulated bed.'}
      </p>
      <div class="profile bed-profile" ref={ref}>
        {heightPx > 0 && (
          <>
            <Grid across={across} session={session} axis={axis} heightPx={heightPx} />
            <Curves {...props} axis={axis} heightPx={heightPx} />
            <Words across={across} session={session} heights={heights} axis={axis} heightPx={heightPx} />
          </>
        )}
        <div class="unseen">
          <HeightsTable stations={all} sides={{ above: 'high', below: 'low' }} />
        </div>
      </div>
    </>
  );
}

function captionText({ heights, reference }: BedProfileProps): string {
  const { corners, front, rear } = heights;
  if (front.length + rear.length < 3) {
    return 'Height along both ways, µm: the shape shows from the second reading on.';
  }
  const both = front.length > 0 && rear.length > 0;
  const only = front.length > 0 ? front : rear;
  const line = corners
    ? `the plane through ${corners[0]}, ${corners[1]} and ${corners[2]}`
    : reference !== 'ends'
      ? `${referenceWord(reference)}${both ? ' of each way' : ''}`
      : both
        ? 'the line through the ends of each way'
        : `the line through ${only[0]?.name} and ${only.at(-1)?.name}`;
  return `Height over ${line}, µm. Shaded: where it lies, 95 % sure.`;
}

interface InPlot {
  readonly across: Across;
  readonly session: BedSession;
  readonly axis: HeightsAxis;
  readonly heightPx: number;
}

function Grid({ across, session, axis, heightPx }: InPlot) {
  const front = new Set(session.plan.lines.front ?? []);
  const stations = session.plan.stations.filter(({ name }) => front.has(name));
  const shown = thinLabels(
    stations.map(({ name, xMm }) => ({
      px: across.px(xMm),
      widthPx: textWidth(name, 12.5, true),
      must: false,
    })),
  );
  const yPx = (um: number) => ((axis.maxUm - um) * heightPx) / (axis.maxUm - axis.minUm);
  return (
    <svg {...box(across, heightPx)} aria-hidden="true">
      {stations.map(
        ({ name, xMm }, k) =>
          shown.has(k) && <path key={name} class="grid" d={`M${across.px(xMm)} 0V${heightPx}`} />,
      )}
      {axis.ticksUm.map((um) => (
        <g key={um}>
          <path
            class={Math.abs(um) < axis.stepUm / 2 ? 'chain' : 'grid'}
            d={`M${across.leftPx} ${yPx(um)}H${across.rightPx}`}
          />
          <text x={across.leftPx - 8} y={yPx(um) + 4} text-anchor="end">
            {heightLabel(um, axis.stepUm)}
          </text>
        </g>
      ))}
    </svg>
  );
}

function Curves({ across, heights, truth, axis, heightPx }: BedProfileProps & InPlot) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const chart = useRef<ProfileChart | null>(null);
  const ink = useInk();
  useEffect(() => {
    if (!canvas.current) return;
    chart.current = createProfileChart(canvas.current);
    return () => chart.current?.destroy();
  }, []);
  useEffect(() => {
    const curve = (stations: readonly ReducedStation[], sigmas: number) =>
      stations.map(({ xMm, heightUm, uUm }) => ({ x: across.px(xMm), y: heightUm + sigmas * uUm }));
    const way = (line: 'front' | 'rear') => ({
      line: curve(heights[line], 0),
      upper: curve(heights[line], coverage),
      lower: curve(heights[line], -coverage),
    });
    chart.current?.draw(
      {
        widthPx: across.widthPx,
        heightPx,
        minUm: axis.minUm,
        maxUm: axis.maxUm,
        curves: [way('front'), way('rear')],
        truth: truth ? [curve(truth.front, 0), curve(truth.rear, 0)] : [],
        points: Math.max(heights.front.length, heights.rear.length) * 14 < across.rightPx - across.leftPx,
      },
      ink,
    );
  });
  return (
    <canvas ref={canvas} role="img" aria-label="Profiles of both ways; their numbers stand in the table" />
  );
}

/** The names at the lines, and where nothing is known yet. */
function Words({ across, session, heights, axis, heightPx }: InPlot & { heights: BedHeights }) {
  const pxPerUm = heightPx / (axis.maxUm - axis.minUm);
  const curves = (['front', 'rear'] as const).map((line) => ({
    name: line,
    points: heights[line].map(({ xMm, heightUm, uUm }) => ({
      x: across.px(xMm),
      y: (axis.maxUm - heightUm) * pxPerUm,
      halfPx: coverage * uUm * pxPerUm,
    })),
  }));
  const labels = lineLabels(
    curves.filter(({ points }) => points.length > 2),
    { leftPx: across.leftPx, rightPx: across.rightPx, heightPx },
    (name) => textWidth(name, 16, true),
  );
  const known = [...heights.front, ...heights.rear].map(({ xMm }) => xMm);
  const end = Math.max(...session.plan.stations.map(({ xMm }) => xMm));
  const from = known.length > 0 ? Math.max(...known) : 0;
  const roomPx = across.px(end) - across.px(from);
  const text = 'not walked yet';
  return (
    <svg {...box(across, heightPx)} aria-hidden="true">
      {!session.ended && roomPx > textWidth(text, 12.5) + 16 && (
        <g>
          {known.length > 0 && <path class="boundary" d={`M${across.px(from)} 0V${heightPx}`} />}
          <text x={across.px(from) + roomPx / 2} y={axis.maxUm * pxPerUm - 8} text-anchor="middle">
            {text}
          </text>
        </g>
      )}
      {labels.map(({ name, x, y }) => (
        <text key={name} class="callout" x={x} y={y} text-anchor="middle">
          {name}
        </text>
      ))}
    </svg>
  );
}
