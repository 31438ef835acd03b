import type { Across } from './across.ts';

interface MetalProps {
  readonly across: Across;
  readonly yPx: number;
  readonly heightPx: number;
}

const hatchPx = 9;

/** A bar seen from its side: thick visible edges and its centre line. */
export function RoundBar({ across, yPx, heightPx }: MetalProps) {
  const { leftPx, rightPx } = across;
  return (
    <g>
      <path class="centre" d={`M${leftPx - 6} ${yPx + heightPx / 2}H${rightPx + 6}`} />
      <rect class="metal" x={leftPx} y={yPx} width={rightPx - leftPx} height={heightPx} />
    </g>
  );
}

/** Cut metal: thick visible edges, thin hatching at 45°. */
export function Metal({ across, yPx, heightPx }: MetalProps) {
  const { leftPx, rightPx } = across;
  const lines: string[] = [];
  for (let px = leftPx - heightPx + hatchPx; px < rightPx; px += hatchPx) {
    const from = Math.max(px, leftPx);
    const to = Math.min(px + heightPx, rightPx);
    lines.push(`M${from} ${yPx + heightPx - (from - px)}L${to} ${yPx + heightPx - (to - px)}`);
  }
  return (
    <g>
      <path class="hatch" d={lines.join('')} />
      <rect class="metal" x={leftPx} y={yPx} width={rightPx - leftPx} height={heightPx} />
    </g>
  );
}
