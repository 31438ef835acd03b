import { useEffect, useRef } from 'preact/hooks';
import type { Session } from '../../shared/session/fold.ts';
import { stationsOf } from '../../shared/survey/way.ts';
import { referenceWord } from '../../shared/words.ts';
import type { ReducedStation, SurveyResult } from '../state/survey-result.ts';
import type { Across } from './across.ts';
import { exaggeration, type HeightsAxis, heightLabel, heightsAxis } from './heights-axis.ts';
import { useInk } from './ink.ts';
import { createProfileChart, type ProfileChart } from './profile-chart.ts';
import { Callout, furthest, NotWalked } from './profile-words.tsx';
import { textWidth } from './text-width.ts';
import { thinLabels } from './thin-labels.ts';
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
  const largestU = Math.max(0.1, ...stations.map(({ uUm }) => uUm));
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
  if (!survey || !first || !last) return 'Height along the way, µm: it grows with every reading.';
  const line =
    survey.result.reference === 'ends'
      ? `the line through ${first.name} and ${last.name}`
      : referenceWord(survey.result.reference);
  return `Height over ${line}, µm. Shaded: where it lies, 95 % sure.`;
}

/** Drawn over one another at any size, also where paper is narrower than the screen. */
function box({ widthPx }: Across, heightPx: number) {
  return {
    width: widthPx,
    height: heightPx,
    viewBox: `0 0 ${widthPx} ${heightPx}`,
    preserveAspectRatio: 'xMinYMin meet',
  } as const;
}

interface GridProps extends Pick<ProfileProps, 'across' | 'session'> {
  readonly axis: HeightsAxis;
  readonly heightPx: number;
  yPx(um: number): number;
}

function Grid({ across, session, axis, heightPx, yPx }: GridProps) {
  const stations = stationsOf(session.setup);
  const marks = stations.map(({ name, xMm }) => ({
    px: across.px(xMm),
    widthPx: textWidth(name, 12.5, true),
    must: false,
  }));
  const shown = thinLabels(marks);
  return (
    <svg {...box(across, heightPx)} aria-hidden="true">
      {stations.map(
        ({ name, xMm }, k) =>
          shown.has(k) && <path key={name} class="grid" d={`M${across.px(xMm)} 0V${heightPx}`} />,
      )}
      {axis.ticksUm.map((um) => {
        const zero = Math.abs(um) < axis.stepUm / 2;
        return (
          <g key={um}>
            <path class={zero ? 'chain' : 'grid'} d={`M${across.leftPx} ${yPx(um)}H${across.rightPx}`} />
            <text x={across.leftPx - 8} y={yPx(um) + 4} text-anchor="end">
              {heightLabel(um, axis.stepUm)}
            </text>
          </g>
        );
      })}
    </svg>
  );
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

/** The same numbers for who can't see the curve. */
function HeightsTable({ stations }: { stations: readonly ReducedStation[] }) {
  return (
    <table class="unseen">
      <caption>Heights of the stations</caption>
      <thead>
        <tr>
          <th scope="col">Station</th>
          <th scope="col">Height, µm</th>
          <th scope="col">Sure to, µm</th>
        </tr>
      </thead>
      <tbody>
        {stations.map(({ name, heightUm, uUm }) => (
          <tr key={name} data-station={name} data-height-um={heightUm} data-u-um={uUm}>
            <th scope="row">{name}</th>
            <td>{heightLabel(heightUm, 0.1)}</td>
            <td>{(coverage * uUm).toFixed(1)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
