import { amount, side, sureTo } from '../../../shared/words.ts';
import type { Across } from '../across.ts';
import { type LadderRows, type Point, wayPx } from './ladder-rows.ts';

interface WindMarkProps {
  readonly across: Across;
  readonly rows: LadderRows;
  readonly at: Point;
  readonly wind: { readonly valueUm: number; readonly uUm: number; readonly corner: string };
}

/** The corner that stands out of the plane of the other three, ringed, and in words above it how far. */
export function WindMark({ across, rows, at, wind }: WindMarkProps) {
  const { valueUm, uUm, corner } = wind;
  const where = side(valueUm, uUm);
  const text =
    where === 'level'
      ? `no wind: ${corner} in the plane, ${sureTo(uUm)}`
      : `wind: ${corner} ${amount(valueUm, uUm)} µm ${where}`;
  const end = Math.min(across.widthPx - 2, across.rightPx);
  return (
    <g>
      <circle class="wind" cx={at.x} cy={at.y} r={wayPx / 2 + 4} />
      <text class="wind" x={end} y={rows.rearLabelPx - 18} text-anchor="end">
        {text}
      </text>
    </g>
  );
}
