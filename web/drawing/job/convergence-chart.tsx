import type { Measured } from '../../../shared/job/before-after.ts';
import { niceStep } from '../../../shared/report/svg.ts';
import { say } from '../../words/say.ts';
import { textWidth } from '../text-width.ts';
import { thinLabels } from '../thin-labels.ts';

interface ConvergenceChartProps {
  readonly rounds: readonly { readonly name: string; readonly figure: Measured }[];
  readonly limit: number | null;
  readonly unit: string;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly label: string;
}

const coverage = 2;
const [left, right, top, foot] = [56, 84, 14, 30];

/** A figure round by round with its doubt, and the limit that it comes down to. */
export function ConvergenceChart(props: ConvergenceChartProps) {
  const { rounds, limit, unit, widthPx, heightPx, label } = props;
  const most = Math.max(
    limit ?? 0,
    ...rounds.map(({ figure }) => Math.abs(figure.value) + coverage * figure.u),
    1e-6,
  );
  const step = niceStep(most, Math.max(2, Math.floor((heightPx - top - foot) / 34)));
  const last = Math.ceil(most / step) * step;
  const bottom = heightPx - foot;
  const perUnit = (bottom - top) / last;
  const y = (value: number) => bottom - value * perUnit;
  const x = (k: number) =>
    rounds.length < 2
      ? (left + widthPx - right) / 2
      : left + 30 + ((widthPx - left - right - 60) * k) / (rounds.length - 1);
  const ticks = Array.from({ length: Math.round(last / step) + 1 }, (_, k) =>
    Number((k * step).toPrecision(9)),
  );
  const points = rounds.map(({ figure }, k) => ({ px: x(k), py: y(Math.abs(figure.value)), u: figure.u }));
  const shown = thinLabels(
    rounds.map(({ name }, k) => ({
      px: x(k),
      widthPx: textWidth(name, 12.5),
      must: k === rounds.length - 1,
    })),
  );
  return (
    <svg
      class="convergence profile-like"
      width={widthPx}
      height={heightPx}
      viewBox={`0 0 ${widthPx} ${heightPx}`}
      role="img"
      aria-label={label}
    >
      {ticks.map((tick) => (
        <g key={tick}>
          <path class="grid" d={`M${left} ${y(tick)}H${widthPx - right}`} />
          <text x={left - 8} y={y(tick) + 4} text-anchor="end">
            {tick === ticks.at(-1) ? `${tick} ${unit}` : tick}
          </text>
        </g>
      ))}
      {limit !== null && (
        <>
          <path class="limit" d={`M${left} ${y(limit)}H${widthPx - right}`} />
          <text class="done" x={widthPx - right + 8} y={y(limit) + 4}>
            {say('limit {limit}', { limit })}
          </text>
        </>
      )}
      <g class="after">
        <polyline class="round-curve" points={points.map(({ px, py }) => `${px},${py}`).join(' ')} />
        {points.map(({ px, py, u }, k) => (
          <g key={rounds[k]!.name}>
            <path class="doubt" d={`M${px} ${py - coverage * u * perUnit}V${py + coverage * u * perUnit}`} />
            <circle class="round-dot" cx={px} cy={py} r={5} />
            {shown.has(k) && (
              <text
                class={k === rounds.length - 1 ? 'done' : ''}
                x={px}
                y={heightPx - 8}
                text-anchor="middle"
              >
                {rounds[k]!.name}
              </text>
            )}
          </g>
        ))}
      </g>
    </svg>
  );
}
