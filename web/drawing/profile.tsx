import { useEffect, useRef } from 'preact/hooks';
import type { Session } from '../../shared/session/fold.ts';
import { referenceWord } from '../../shared/words.ts';
import type { ReducedStation, SurveyResult } from '../state/survey-result.ts';
import type { Across } from './across.ts';
import { exaggeration, type HeightsAxis, heightsAxis } from './heights-axis.ts';
import { HeightsTable } from './heights-table.tsx';
import { useInk } from './ink.ts';
import { createProfileChart, type ProfileChart } from './profile-chart.ts';
import { box, Grid } from './profile-grid.tsx';
import { Callout, furthest, NotWalked } from './profile-words.tsx';
import { useSize } from './use-size.ts';

/** The band covers about 95 %, as the words "sure to" do. */
const coverage = 2;

export interface ProfileProps {
  readonly across: Across;
  readonly session: Session;
  readonly survey: SurveyResult | null;
  /** The true shape of a simulated part on the same reference, µm by station; empty when not laid over. */
  readonly truth: readonly ReducedStation[];
}

/** The profile, straight beneath the part and on its x axis: heights in words, band, reference line. */
export function Profile(props: ProfileProps) {
  const { across, session, survey, truth } = props;
  const { ref, heightPx } = useSize<HTMLDivElement>();
  const stations = survey?.stations ?? [];
  const values = [
    ...stations.flatMap(({ heightUm, uUm }) => [heightUm + coverage * uUm, heightUm - coverage * uUm]),
    ...truth.map(({ heightUm }) => heightUm),
  ];
  // Two stations have no shape yet: the axis waits for one.
  const largestU = stations.length < 3 ? 0.5 : Math.max(0.1, ...stations.map(({ uUm }) => uUm));
  const worst = furthest(stations);
  const lines = Math.max(3, Math.min(8, Math.floor(heightPx / 30)));
  const above = worst !== null && worst.heightUm > 0;
  const axis = heightsAxis(values, largestU, lines, above ? 'above' : 'below');
  const pxPerUm = heightPx / (axis.maxUm - axis.minUm);
  const yPx = (um: number) => (axis.maxUm - um) * pxPerUm;
  return (
    <>
      <p class="caption-line">
        {captionText(survey)} Drawn {exaggeration(Math.max(pxPerUm, 1e-9), across.pxPerMm)} × too high.
        {truth.length > 0 && ' Rings and dashes: the true shape of the simulated part.'}
      </p>
      <div class="profile" ref={ref}>
        {heightPx > 0 && (
          <>
            <Grid across={across} session={session} axis={axis} heightPx={heightPx} yPx={yPx} />
            <Curve {...props} axis={axis} heightPx={heightPx} />
            <svg {...box(across, heightPx)} aria-hidden="true">
              <NotWalked
                across={across}
                session={session}
                survey={survey}
                heightPx={heightPx}
                middlePx={yPx((above ? -0.5 : 0.5) * axis.stepUm) + 4}
              />
              <Callout across={across} session={session} survey={survey} heightPx={heightPx} yPx={yPx} />
            </svg>
          </>
        )}
        <HeightsTable stations={stations} />
      </div>
    </>
  );
}

function captionText(survey: SurveyResult | null): string {
  const first = survey?.stations[0];
  const last = survey?.stations.at(-1);
  if (!survey || !first || !last || survey.stations.length < 3) {
    return 'Height along the way, µm: the shape shows from the second reading on.';
  }
  const line =
    survey.result.reference === 'ends'
      ? `the line through ${first.name} and ${last.name}`
      : referenceWord(survey.result.reference);
  return `Height over ${line}, µm. Shaded: where it lies, 95 % sure.`;
}

function Curve({
  across,
  survey,
  truth,
  axis,
  heightPx,
}: ProfileProps & { axis: HeightsAxis; heightPx: number }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const chart = useRef<ProfileChart | null>(null);
  const ink = useInk();
  useEffect(() => {
    if (!canvas.current) return;
    chart.current = createProfileChart(canvas.current);
    return () => chart.current?.destroy();
  }, []);
  useEffect(() => {
    const stations = survey?.stations ?? [];
    const curve = (height: (station: ReducedStation) => number) =>
      stations.map((station) => ({ x: across.px(station.xMm), y: height(station) }));
    chart.current?.draw(
      {
        widthPx: across.widthPx,
        heightPx,
        minUm: axis.minUm,
        maxUm: axis.maxUm,
        line: curve(({ heightUm }) => heightUm),
        upper: curve(({ heightUm, uUm }) => heightUm + coverage * uUm),
        lower: curve(({ heightUm, uUm }) => heightUm - coverage * uUm),
        truth: truth.map(({ xMm, heightUm }) => ({ x: across.px(xMm), y: heightUm })),
        points: stations.length < 40,
      },
      ink,
    );
  });
  return <canvas ref={canvas} role="img" aria-label="Profile; its numbers stand in the table of heights" />;
}
