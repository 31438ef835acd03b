import type { Across } from '../across.ts';
import type { LadderRows } from './ladder-rows.ts';

/**
 * The gauge, between the lines that are walked. Where the page can't hold it to scale its figure is underlined, as
 * ISO 129-1 wants it for what is drawn out of scale (from memory, unchecked).
 */
export function GaugeDimension({ across, rows, text }: { across: Across; rows: LadderRows; text: string }) {
  const { rearPx, frontPx, gaugeToScale } = rows;
  const px = across.leftPx - 10;
  return (
    <g>
      <path
        class="thin"
        d={`M${px - 5} ${rearPx}H${across.leftPx - 3}M${px - 5} ${frontPx}H${across.leftPx - 3}M${px} ${rearPx}V${frontPx}`}
      />
      <path class="arrow" d={`M${px} ${rearPx}l-2.5 9h5zM${px} ${frontPx}l-2.5 -9h5z`} />
      <text
        x={px - 8}
        y={(rearPx + frontPx) / 2 + 4.5}
        text-anchor="end"
        text-decoration={gaugeToScale ? undefined : 'underline'}
      >
        {text}
        {!gaugeToScale && <title>not to scale</title>}
      </text>
    </g>
  );
}
