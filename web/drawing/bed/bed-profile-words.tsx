import type { Across } from '../across.ts';
import { type HeightsAxis, heightLabel } from '../heights-axis.ts';
import { box } from '../profile-grid.tsx';
import { textWidth } from '../text-width.ts';
import { thinLabels } from '../thin-labels.ts';
import type { BedHeights } from './bed-heights.ts';
import type { BedSession } from './ladder-rows.ts';
import { lineLabels } from './line-labels.ts';

/** The band covers about 95 %, as the words "sure to" do. */
export const coverage = 2;

export interface InPlot {
  readonly across: Across;
  readonly session: BedSession;
  readonly axis: HeightsAxis;
  readonly heightPx: number;
}

/** Heights in words at the left, the reference as a chain line, a thin line at each named station. */
export function Grid({ across, session, axis, heightPx }: InPlot) {
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

/** The names at the lines, and where nothing is known yet. */
export function Words({ across, session, heights, axis, heightPx }: InPlot & { heights: BedHeights }) {
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
  const fresh = session.takes.at(-1)?.event;
  const taken = [...heights.front, ...heights.rear].find(({ name }) => name === fresh?.place.at.at(-1));
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
      {fresh && taken && !session.ended && (
        <circle
          key={fresh.seq}
          class="fresh"
          cx={across.px(taken.xMm)}
          cy={(axis.maxUm - taken.heightUm) * pxPerUm}
          r={4}
        />
      )}
      {labels.map(({ name, x, y }) => (
        <text key={name} class="callout" x={x} y={y} text-anchor="middle">
          {name}
        </text>
      ))}
    </svg>
  );
}
