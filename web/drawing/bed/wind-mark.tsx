import { side } from '../../../shared/words.ts';
import { asWritten } from '../../words/quantity.ts';
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
  const writing = asWritten();
  const where = side(valueUm, uUm, writing);
  const text =
    where === 'level'
      ? `no wind: ${corner} in the plane, ${writing.sureTo(uUm)}`
      : `wind: ${corner} ${writing.size(valueUm, uUm)} ${where}`;
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
