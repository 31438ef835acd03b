import type { Point } from './plan-view.ts';

interface PlateLevelProps {
  readonly from: Point;
  readonly to: Point;
  readonly lifted: boolean;
  readonly stale: boolean;
  /** The foot that the plus end of the level points to. */
  readonly plusAt: 'from' | 'to';
}

const breadthPx = 24;

/** The level seen from above, turned as it lies, feet on their stations. */
export function PlateLevel({ from, to, lifted, stale, plusAt }: PlateLevelProps) {
  const lengthPx = Math.hypot(to.x - from.x, to.y - from.y);
  const foot = Math.min(8, Math.max(3, lengthPx * 0.3));
  const half = Math.max(lengthPx / 2 + foot / 2 + 4, 12);
  const turn = (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI;
  // Lettering that would stand on its head is turned about.
  const upright = turn > 90 || turn <= -90 ? 180 : 0;
  const toPlus = (plusAt === 'to' ? 1 : -1) * (upright ? -1 : 1);
  return (
    <g
      class={`level plan ${stale ? 'stale' : ''} ${lifted ? 'lifted' : ''}`}
      style={{
        transform: `translate(${(from.x + to.x) / 2}px, ${(from.y + to.y) / 2}px) rotate(${turn + upright}deg)`,
      }}
    >
      <rect x={-half} y={-breadthPx / 2} width={2 * half} height={breadthPx} />
      {[-1, 1].map((end) => (
        <rect
          key={end}
          class="foot"
          x={(end * lengthPx) / 2 - foot / 2}
          y={-foot / 2}
          width={foot}
          height={foot}
        />
      ))}
      {half >= 52 && (
        <text y={4.5} text-anchor="middle">
          level
        </text>
      )}
      {half >= 18 && (
        <text
          x={half >= 52 ? toPlus * (half - 22) : 0}
          y={5}
          text-anchor="middle"
          style={{ fontSize: '16px' }}
        >
          +
        </text>
      )}
    </g>
  );
}
