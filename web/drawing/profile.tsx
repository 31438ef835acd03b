import { useLayoutEffect, useRef } from 'preact/hooks';
import type { Session } from '../../shared/session/fold.ts';
import type { LineResult, ReducedStation, SurveyResult } from '../state/survey-result.ts';
import { profileCaption, sidesOf } from '../words/profile.ts';
import type { Across } from './across.ts';
import { exaggeration, type HeightsAxis, heightsAxis } from './heights-axis.ts';
import { HeightsTable } from './heights-table.tsx';
import { useInk } from './ink.ts';
import { createProfileChart, type ProfileChart } from './profile-chart.ts';
import { box, Grid } from './profile-grid.tsx';
import { Callout, CurveNames, Fresh, furthest, NotWalked } from './profile-words.tsx';
import { useSize } from './use-size.ts';

/** The band covers about 95 %, as the words "sure to" do. */
const coverage = 2;

export interface ProfileProps {
  readonly across: Across;
  readonly session: Session;
  readonly survey: SurveyResult | null;
  /** The true shape of a simulated part on the same reference, line by line; empty when not laid over. */
  readonly truth: readonly (readonly ReducedStation[])[];
}

/** The profile, straight beneath the part and on its x axis: heights in words, band, reference line. */
export function Profile(props: ProfileProps) {
  const { across, session, survey, truth } = props;
  const { ref, heightPx } = useSize<HTMLDivElement>();
  const lines = survey?.lines ?? [];
  const stations = lines.flatMap((line) => line.stations);
  const values = [
    ...stations.flatMap(({ heightUm, uUm }) => [heightUm + coverage * uUm, heightUm - coverage * uUm]),
    ...truth.flat().map(({ heightUm }) => heightUm),
  ];
  // Two stations have no shape yet: the axis waits for one.
  const largestU = stations.length < 3 ? 0.5 : Math.max(0.1, ...stations.map(({ uUm }) => uUm));
  const worst = furthest(stations);
  const count = Math.max(3, Math.min(8, Math.floor(heightPx / 30)));
  const above = worst !== null && worst.heightUm > 0;
  const axis = heightsAxis(values, largestU, count, above ? 'above' : 'below');
  const pxPerUm = heightPx / (axis.maxUm - axis.minUm);
  const yPx = (um: number) => (axis.maxUm - um) * pxPerUm;
  const drawn = { across, session, survey, heightPx, yPx };
  return (
    <>
      <p class="caption-line">
        {profileCaption(session, survey)} Drawn {exaggeration(Math.max(pxPerUm, 1e-9), across.pxPerMm)} × too
        high.
        {truth.length > 0 && ' Rings and dashes: the true shape of the simulated part.'}
      </p>
      <div class="profile" ref={ref}>
        {heightPx > 0 && (
          <>
            <Grid {...drawn} axis={axis} sides={sidesOf(session)} />
            <Curves across={across} lines={lines} truth={truth} axis={axis} heightPx={heightPx} />
            <svg {...box(across, heightPx)} aria-hidden="true">
              <NotWalked {...drawn} axis={axis} />
              <CurveNames {...drawn} />
              <Callout {...drawn} />
              <Fresh {...drawn} />
            </svg>
          </>
        )}
        <HeightsTable stations={stations} sides={sidesOf(session)} />
      </div>
    </>
  );
}

interface CurvesProps {
  readonly across: Across;
  readonly lines: readonly LineResult[];
  readonly truth: ProfileProps['truth'];
  readonly axis: HeightsAxis;
  readonly heightPx: number;
}

function Curves({ across, lines, truth, axis, heightPx }: CurvesProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const chart = useRef<ProfileChart | null>(null);
  const ink = useInk();
  useLayoutEffect(() => {
    if (!canvas.current) return;
    chart.current = createProfileChart(canvas.current);
    return () => chart.current?.destroy();
  }, []);
  useLayoutEffect(() => {
    const curve = (stations: readonly ReducedStation[], height: (station: ReducedStation) => number) =>
      stations.map((station) => ({ x: across.px(station.xMm), y: height(station) }));
    chart.current?.draw(
      {
        widthPx: across.widthPx,
        heightPx,
        minUm: axis.minUm,
        maxUm: axis.maxUm,
        curves: lines.map(({ stations }) => ({
          line: curve(stations, ({ heightUm }) => heightUm),
          upper: curve(stations, ({ heightUm, uUm }) => heightUm + coverage * uUm),
          lower: curve(stations, ({ heightUm, uUm }) => heightUm - coverage * uUm),
        })),
        truth: truth.map((stations) => curve(stations, ({ heightUm }) => heightUm)),
        points: lines.every(({ stations }) => stations.length < 40),
      },
      ink,
    );
  });
  return <canvas ref={canvas} role="img" aria-label="Profile; its numbers stand in the table of heights" />;
}
