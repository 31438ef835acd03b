import { liftPx } from './level.tsx';

interface TipProps {
  readonly px: number;
  readonly surfacePx: number;
  readonly lifted: boolean;
  readonly stale: boolean;
}

const dialPx = 16;
const stemPx = 11;

/** An indicator, the ball of its tip exactly on its station; drawn above the metal while it moves. */
export function Tip({ px, surfacePx, lifted, stale }: TipProps) {
  const dialAt = -10 - stemPx - dialPx;
  return (
    <g
      class={`level ${stale ? 'stale' : ''}`}
      style={{ transform: `translate(${px}px, ${surfacePx - 1 - (lifted ? liftPx : 0)}px)` }}
    >
      <circle cx={0} cy={-3.5} r={3.5} />
      <path d="M0 -7v-6" />
      <rect x={-3.5} y={-12 - stemPx} width={7} height={stemPx} />
      <circle cx={0} cy={dialAt} r={dialPx} />
      <path
        d={`M0 ${dialAt}l${0.45 * dialPx} ${-0.55 * dialPx}M0 ${dialAt - dialPx}v4M${-dialPx} ${dialAt}h4M${dialPx} ${dialAt}h-4`}
      />
    </g>
  );
}
