import { useLayoutEffect, useRef } from 'preact/hooks';
import type { ReferenceKind } from '../../../shared/figures/reference.ts';
import { referenceWord } from '../../../shared/words.ts';
import type { ReducedStation } from '../../state/survey-result.ts';
import { asWritten } from '../../words/quantity.ts';
import type { Across } from '../across.ts';
import { exaggeration, heightsAxis } from '../heights-axis.ts';
import { HeightsTable } from '../heights-table.tsx';
import { useInk } from '../ink.ts';
import { createProfileChart, type ProfileChart } from '../profile-chart.ts';
import { useSize } from '../use-size.ts';
import type { BedHeights } from './bed-heights.ts';
import { coverage, Grid, type InPlot, Words } from './bed-profile-words.tsx';
import type { BedSession } from './ladder-rows.ts';

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
    return `Height along both ways, ${asWritten().head()}: the shape shows from the second reading on.`;
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
  return `Height over ${line}, ${asWritten().head()}. Shaded: where it lies, 95 % sure.`;
}

function Curves({ across, heights, truth, axis, heightPx }: BedProfileProps & InPlot) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const chart = useRef<ProfileChart | null>(null);
  const ink = useInk();
  useLayoutEffect(() => {
    if (!canvas.current) return;
    chart.current = createProfileChart(canvas.current);
    return () => chart.current?.destroy();
  }, []);
  useLayoutEffect(() => {
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
