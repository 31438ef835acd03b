import { liftPx } from './level.tsx';

interface PinsProps {
  readonly px: number;
  readonly surfacePx: number;
  readonly metalPx: number;
  readonly lifted: boolean;
  readonly stale: boolean;
}

const pinPx = { length: 30, thick: 8 };

/** Two pins in the corners of a dovetail, seen from above, and the micrometer that measures over them. */
export function Pins({ px, surfacePx, metalPx, lifted, stale }: PinsProps) {
  const pin = { x: -pinPx.length / 2, width: pinPx.length, height: pinPx.thick };
  return (
    <g
      class={`level ${stale ? 'stale' : ''}`}
      style={{ transform: `translate(${px}px, ${surfacePx - (lifted ? liftPx : 0)}px)` }}
    >
      <rect x={-4} y={-26} width={8} height={18} />
      <rect x={-9} y={-48} width={18} height={22} />
      <path d="M-9 -42h18M-9 -36h18" />
      <rect {...pin} y={-pinPx.thick} />
      {!lifted && <rect {...pin} y={metalPx} />}
    </g>
  );
}
