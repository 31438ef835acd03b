import { textWidth } from './text-width.ts';

interface DimensionProps {
  readonly fromPx: number;
  readonly toPx: number;
  readonly yPx: number;
  readonly text: string;
}

const arrowPx = 9;

/** A dimension as a draughtsman draws it: thin line, closed arrowheads, the figure above the line. */
export function Dimension({ fromPx, toPx, yPx, text }: DimensionProps) {
  const roomy = toPx - fromPx >= Math.max(textWidth(text, 12.5) + 12, 3 * arrowPx);
  return (
    <g>
      <path class="thin" d={`M${fromPx} ${yPx - 5}v10M${toPx} ${yPx - 5}v10`} />
      {roomy ? (
        <Inside fromPx={fromPx} toPx={toPx} yPx={yPx} />
      ) : (
        <Outside fromPx={fromPx} toPx={toPx} yPx={yPx} text={text} />
      )}
      <text
        x={roomy ? (fromPx + toPx) / 2 : toPx + arrowPx + 4}
        y={yPx - 4}
        text-anchor={roomy ? 'middle' : 'start'}
      >
        {text}
      </text>
    </g>
  );
}

type Line = Omit<DimensionProps, 'text'>;

function Inside({ fromPx, toPx, yPx }: Line) {
  return (
    <>
      <path class="thin" d={`M${fromPx} ${yPx}H${toPx}`} />
      <path class="arrow" d={arrow(fromPx, yPx, 1) + arrow(toPx, yPx, -1)} />
    </>
  );
}

/** Too narrow for its figure: the arrows come from outside, the figure stands beside. */
function Outside({ fromPx, toPx, yPx, text }: DimensionProps) {
  const right = toPx + arrowPx + 8 + textWidth(text, 12.5);
  return (
    <>
      <path class="thin" d={`M${fromPx - 2 * arrowPx} ${yPx}H${fromPx}M${toPx} ${yPx}H${right}`} />
      <path class="arrow" d={arrow(fromPx, yPx, -1) + arrow(toPx, yPx, 1)} />
    </>
  );
}

/** An arrowhead with its tip at `x`, its body towards `side`. */
function arrow(x: number, y: number, side: 1 | -1): string {
  return `M${x} ${y}l${side * arrowPx} -2.5v5z`;
}
