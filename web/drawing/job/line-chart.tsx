import type { Measured } from '../../../shared/job/before-after.ts';
import type { Across } from '../across.ts';
import { exaggeration, type HeightsAxis, heightLabel } from '../heights-axis.ts';
import { textWidth } from '../text-width.ts';
import { thinLabels } from '../thin-labels.ts';
import type { Placed } from './placed.ts';

/** A survey of a line as it is drawn: dashes are what was, the full line is what is. */
export interface RoundCurve {
  readonly kind: 'before' | 'after';
  readonly name: string;
  readonly heights: readonly Measured[];
}

interface LineChartProps {
  readonly across: Across;
  readonly stations: readonly Placed[];
  readonly curves: readonly RoundCurve[];
  readonly axis: HeightsAxis;
  readonly heightPx: number;
  readonly label: string;
}

const coverage = 2;
const barPx = 16;
/** The metal, its ticks and the names of the stations. */
export const partPx = 48;

/** The part with its stations, and under it on the same axis the heights of one or two rounds on one scale. */
export function LineChart({ across, stations, curves, axis, heightPx, label }: LineChartProps) {
  const chartPx = heightPx - partPx - 10;
  const yPx = (um: number) => partPx + ((axis.maxUm - um) * chartPx) / (axis.maxUm - axis.minUm);
  return (
    <svg
      class="line-chart profile-like"
      width={across.widthPx}
      height={heightPx}
      viewBox={`0 0 ${across.widthPx} ${heightPx}`}
      role="img"
      aria-label={label}
    >
      <Bar across={across} stations={stations} />
      {stations.map(({ name, xMm }) => (
        <path key={name} class="grid" d={`M${across.px(xMm)} ${partPx}V${partPx + chartPx}`} />
      ))}
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
      {curves.map(({ kind, heights }) => {
        const at = (k: number, um: number) => `${across.px(stations[k]!.xMm)},${yPx(um)}`;
        const upper = heights.map(({ value, u }, k) => at(k, value + coverage * u));
        const lower = heights.map(({ value, u }, k) => at(k, value - coverage * u));
        return (
          <g key={kind} class={kind}>
            <polygon class="sure-band" points={[...upper, ...lower.reverse()].join(' ')} />
            <polyline class="round-curve" points={heights.map(({ value }, k) => at(k, value)).join(' ')} />
            {heights.map(({ value }, k) => (
              <circle
                key={stations[k]!.name}
                class="round-dot"
                cx={across.px(stations[k]!.xMm)}
                cy={yPx(value)}
                r={4}
              />
            ))}
          </g>
        );
      })}
    </svg>
  );
}

/** How many times too high a chart of that height draws, in digits. */
export function timesTooHigh(across: Across, axis: HeightsAxis, heightPx: number): string {
  return exaggeration((heightPx - partPx - 10) / (axis.maxUm - axis.minUm), across.pxPerMm);
}

/** The metal seen from the side, and where its stations are. */
function Bar({ across, stations }: Pick<LineChartProps, 'across' | 'stations'>) {
  const shown = thinLabels(
    stations.map(({ name, xMm }) => ({
      px: across.px(xMm),
      widthPx: textWidth(name, 12.5, true),
      must: false,
    })),
  );
  const { leftPx, rightPx } = across;
  const hatches = Array.from({ length: Math.floor((rightPx - leftPx) / 9) }, (_, k) => leftPx + 9 * k);
  return (
    <g>
      <path
        class="hatch"
        d={hatches.map((px) => `M${px} ${barPx + 2}L${Math.min(px + barPx, rightPx)} 2`).join('')}
      />
      <rect class="metal" x={leftPx} y={2} width={rightPx - leftPx} height={barPx} />
      {stations.map(({ name, xMm }, k) => (
        <g key={name}>
          <path class="tick done" d={`M${across.px(xMm)} ${barPx + 2}v7`} />
          {shown.has(k) && (
            <text class="done" x={across.px(xMm)} y={partPx - 9} text-anchor="middle">
              {name}
            </text>
          )}
        </g>
      ))}
    </g>
  );
}
