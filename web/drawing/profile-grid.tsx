import type { Session } from '../../shared/session/fold.ts';
import { runNow, stationsAlong } from '../state/on-plan.ts';
import type { Sides } from '../words/sides.ts';
import type { Across } from './across.ts';
import { type HeightsAxis, heightLabel } from './heights-axis.ts';
import { textWidth } from './text-width.ts';
import { thinLabels } from './thin-labels.ts';

/** Drawn over one another at any size, also where paper is narrower than the screen. */
export function box({ widthPx }: Across, heightPx: number) {
  return {
    width: widthPx,
    height: heightPx,
    viewBox: `0 0 ${widthPx} ${heightPx}`,
    preserveAspectRatio: 'xMinYMin meet',
  } as const;
}

interface GridProps {
  readonly across: Across;
  readonly session: Session;
  readonly axis: HeightsAxis;
  readonly sides: Sides;
  readonly heightPx: number;
  yPx(um: number): number;
}

/** Heights in words at the left, the reference as a chain line, a thin line at each named station. */
export function Grid({ across, session, axis, sides, heightPx, yPx }: GridProps) {
  const stations = stationsAlong(session, runNow(session)?.line ?? '');
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
              {heightLabel(um, axis.stepUm, sides)}
            </text>
          </g>
        );
      })}
    </svg>
  );
}
