import { textWidth } from './text-width.ts';

interface LevelProps {
  readonly fromPx: number;
  readonly toPx: number;
  /** Where the metal's surface is. */
  readonly surfacePx: number;
  readonly lifted: boolean;
  readonly stale: boolean;
  /** The end that the plus end of the level points to. */
  readonly plusAt: 'from' | 'to';
}

const bodyPx = 31;
export const feetPx = 15;
export const liftPx = 11;

/** The level, its feet exactly on their two stations; drawn above the metal while it moves. */
export function Level({ fromPx, toPx, surfacePx, lifted, stale, plusAt }: LevelProps) {
  const foot = footWidth(fromPx, toPx);
  const half = Math.max((toPx - fromPx + foot + 6) / 2, 15);
  const middle = (fromPx + toPx) / 2;
  const width = 2 * half;
  const top = -feetPx - bodyPx;
  /** Beside its name the level has its plus. */
  const roomForName = width >= textWidth('level', 13, true) + 26;
  const plusPx = plusAt === 'to' ? half - 12 : 12 - half;
  return (
    <g
      class={`level ${stale ? 'stale' : ''}`}
      style={{ transform: `translate(${middle}px, ${surfacePx - 1 - (lifted ? liftPx : 0)}px)` }}
    >
      <rect x={fromPx - middle - foot / 2} y={-feetPx} width={foot} height={feetPx} />
      <rect x={toPx - middle - foot / 2} y={-feetPx} width={foot} height={feetPx} />
      <rect x={-half} y={top} width={width} height={bodyPx} />
      {roomForName && (
        <text x={plusAt === 'to' ? -6 : 6} y={top + bodyPx / 2 + 4.5} text-anchor="middle">
          level
        </text>
      )}
      <text
        x={width >= 44 ? plusPx : 0}
        y={top + bodyPx / 2 + 5}
        text-anchor="middle"
        style={{ fontSize: '16px' }}
      >
        +
      </text>
    </g>
  );
}

/** How broad a foot is drawn, px. */
export function footWidth(fromPx: number, toPx: number): number {
  return Math.max(3, Math.min(14, (toPx - fromPx) * 0.3));
}
