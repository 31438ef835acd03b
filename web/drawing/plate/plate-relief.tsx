import { exaggeration } from '../heights-axis.ts';
import type { HeightField } from './height-field.ts';
import { latticeOf } from './lattice.ts';
import { coveredMm, type PlateSession } from './plate-session.ts';
import { reliefOf } from './relief.ts';
import { inkOf, stepOf, type TintSteps } from './tint-steps.ts';

interface PlateReliefProps {
  readonly session: PlateSession;
  readonly field: HeightField;
  readonly steps: TintSteps;
  readonly widthPx: number;
}

/** Room for words at the corners, px. */
const marginPx = 22;

/** The measured heights as a relief, much too high, in the ink of the plan. */
export function PlateRelief({ session, field, steps, widthPx }: PlateReliefProps) {
  const size = coveredMm(session);
  const columns = Math.max(12, Math.min(36, Math.round(widthPx / 14)));
  const rows = Math.max(6, Math.round((columns * size.yMm) / size.xMm));
  const range = { lowUm: steps.fromUm, highUm: steps.fromUm + steps.count * steps.stepUm };
  const relief = reliefOf(latticeOf(field, size, columns, rows), range, widthPx - 2);
  const { cells, heightPx, pxPerMm, pxPerUm, point } = relief;
  const floor = [
    point(0, 0, range.lowUm),
    point(size.xMm, 0, range.lowUm),
    point(size.xMm, size.yMm, range.lowUm),
  ];
  const back = point(0, size.yMm, range.lowUm);
  return (
    <figure class="relief">
      <svg
        width={widthPx}
        height={heightPx + 2 * marginPx}
        viewBox={`-1 ${-marginPx} ${widthPx} ${heightPx + 2 * marginPx}`}
        role="img"
        aria-label="Relief of the plate, near edge in front"
      >
        <path class="chain" d={`M${[...floor, back].map((at) => at.join(' ')).join('L')}z`} />
        {cells.map(({ corners, meanUm }) => {
          const d = `M${corners.map(([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}z`;
          return (
            <g key={d}>
              <path class="ground" d={d} />
              <path class="cell" d={d} style={{ fillOpacity: inkOf(steps, stepOf(steps, meanUm)) }} />
            </g>
          );
        })}
        <text x={floor[0]![0]} y={heightPx + 17}>
          near left
        </text>
        <text x={floor[1]![0]} y={heightPx + 17} text-anchor="end">
          near right
        </text>
      </svg>
      <figcaption class="caption-line">
        {`Seen from the near edge, depth halved, heights drawn ${exaggeration(pxPerUm, pxPerMm)} × too high. Chain line: the foot of the lowest step.`}
      </figcaption>
    </figure>
  );
}
