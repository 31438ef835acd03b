/** A curve on the page: px to the right, px down; `halfPx` is half the breadth of its band there. */
export interface LabelledCurve {
  readonly name: string;
  readonly points: readonly { readonly x: number; readonly y: number; readonly halfPx: number }[];
}

export interface LineLabel {
  readonly name: string;
  readonly x: number;
  /** Baseline of the text. */
  readonly y: number;
}

const textPx = 13;
const gapPx = 7;
/** Nearer than this, a name touches a curve. */
const touchingPx = 3;

/**
 * A name for each curve, at the curve, clear of every band and of the frame: of all places above and below its points
 * the one with the most air. Longer names need more room.
 */
export function lineLabels(
  curves: readonly LabelledCurve[],
  frame: { readonly leftPx: number; readonly rightPx: number; readonly heightPx: number },
  widthOf: (name: string) => number,
): LineLabel[] {
  const placed: LineLabel[] = [];
  for (const { name, points } of curves) {
    const half = widthOf(name) / 2;
    const boxes = points.flatMap(({ x, y, halfPx }) =>
      [y - halfPx - gapPx, y + halfPx + gapPx + textPx].map((baseline) => ({
        name,
        x: Math.min(Math.max(x, frame.leftPx + half), frame.rightPx - half),
        y: baseline,
      })),
    );
    const airOf = (label: LineLabel) => air(label, half, curves, placed, frame, widthOf);
    const best = boxes.reduce<LineLabel | null>((a, b) => (a && airOf(a) >= airOf(b) ? a : b), null);
    if (best) placed.push(best);
  }
  return placed;
}

/** Px between a label and the nearest thing that it could touch; negative where it does. More than 30 is no better. */
function air(
  { name, x, y }: LineLabel,
  half: number,
  curves: readonly LabelledCurve[],
  placed: readonly LineLabel[],
  { heightPx }: { readonly heightPx: number },
  widthOf: (name: string) => number,
): number {
  const [top, bottom] = [y - textPx, y + 3];
  let least = Math.min(30, top, heightPx - bottom);
  for (const { name: other, points } of curves) {
    for (const span of spans(points, x - half - 6, x + half + 6)) {
      const clear = Math.max(top - span.bottom, span.top - bottom);
      // At its own curve a name stands close; from the others it keeps away, so that nobody reads it as theirs.
      if (other !== name || clear < touchingPx) least = Math.min(least, clear);
    }
  }
  for (const other of placed) {
    const beside = Math.abs(other.x - x) - half - widthOf(other.name) / 2;
    least = Math.min(least, Math.max(beside, Math.abs(other.y - y) - textPx - 3));
  }
  return least;
}

/** Heights between which the band runs over each piece of the curve that lies between two places. */
function spans(points: LabelledCurve['points'], fromX: number, toX: number) {
  return points.flatMap((point, k) => {
    const next = points[k + 1] ?? point;
    if (next.x < fromX || point.x > toX) return [];
    const at = (x: number) => {
      const t =
        next.x > point.x ? (Math.min(Math.max(x, point.x), next.x) - point.x) / (next.x - point.x) : 0;
      return {
        y: point.y + t * (next.y - point.y),
        halfPx: point.halfPx + t * (next.halfPx - point.halfPx),
      };
    };
    const [a, b] = [at(fromX), at(toX)];
    return [
      {
        top: Math.min(a.y - a.halfPx, b.y - b.halfPx),
        bottom: Math.max(a.y + a.halfPx, b.y + b.halfPx),
      },
    ];
  });
}
