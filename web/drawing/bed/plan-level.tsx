import { levelPx, type Point } from './ladder-rows.ts';

interface PlanLevelProps {
  readonly from: Point;
  readonly to: Point;
  readonly lifted: boolean;
  readonly stale: boolean;
  /** The foot that the plus end of the level points to. */
  readonly plusAt: 'from' | 'to';
}

const footPx = 8;

/** The level seen from above: lengthwise on its two feet, or in the middle of a bridge across both ways. */
export function PlanLevel({ from, to, lifted, stale, plusAt }: PlanLevelProps) {
  const across = from.x === to.x;
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  const half = across ? 26 : Math.max(Math.abs(to.x - from.x) / 2 + footPx / 2 + 4, 13);
  const plus = half < 52 ? 0 : (plusAt === 'to' ? 1 : -1) * (half - 24);
  const reach = Math.abs(to.y - from.y) / 2 + footPx;
  return (
    <g
      class={`level plan ${stale ? 'stale' : ''} ${lifted ? 'lifted' : ''}`}
      style={{ transform: `translate(${middle.x}px, ${middle.y}px)` }}
    >
      {across && <rect class="bridge" x={-7} y={-reach} width={14} height={2 * reach} />}
      <rect x={-half} y={-levelPx / 2} width={2 * half} height={levelPx} />
      {[from, to].map(({ x, y }) => (
        <rect
          key={`${x} ${y}`}
          class="foot"
          x={x - middle.x - footPx / 2}
          y={y - middle.y - footPx / 2}
          width={footPx}
          height={footPx}
        />
      ))}
      {(across || half >= 52) && (
        <text y={5} text-anchor="middle">
          level
        </text>
      )}
      <PlusEnd across={across} plus={plus} half={half} plusAt={plusAt} />
    </g>
  );
}

/** On the bridge the plus end points to a way; there is room for it only beside the body. */
function PlusEnd({
  across,
  plus,
  half,
  plusAt,
}: {
  across: boolean;
  plus: number;
  half: number;
  plusAt: 'from' | 'to';
}) {
  if (!across && half < 20) return null;
  const place = across
    ? { x: 15, y: plusAt === 'to' ? -levelPx / 2 - 5 : levelPx / 2 + 15 }
    : { x: plus, y: 5 };
  return (
    <text {...place} text-anchor="middle" style={{ fontSize: '16px' }}>
      +
    </text>
  );
}

/** Where the feet are to be set next, while the level still stands elsewhere. */
export function PlanFeet({ from, to }: { from: Point; to: Point }) {
  const px = footPx + 6;
  return (
    <g class="ghost">
      {[from, to].map(({ x, y }) => (
        <rect key={`${x} ${y}`} x={x - px / 2} y={y - px / 2} width={px} height={px} />
      ))}
    </g>
  );
}
