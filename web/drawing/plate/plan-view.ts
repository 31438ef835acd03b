import type { PlacedLabel } from './keep-apart.ts';
import { coveredMm, type PlateSession } from './plate-session.ts';

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** The plate from above on the page: the near edge below, the start of x at the left. */
export interface PlanView {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly pxPerMm: number;
  /** The outline of the plate. */
  readonly plate: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
  /** The rectangle that the stations cover. */
  readonly covered: PlanView['plate'];
  point(xMm: number, yMm: number): Point;
}

/** Room for words above and for words and dimensions below the plate, px. */
const abovePx = 22;
const belowPx = 44;
const sidePx = 8;

/** The plate as large as it goes in the room, to one scale in both directions. */
export function planView(session: PlateSession, widthPx: number, mostHeightPx: number): PlanView {
  const { lengthMm, widthMm, borderMm } = session.setup;
  const pxPerMm = Math.min(
    (widthPx - 2 * sidePx) / lengthMm,
    Math.max(40, mostHeightPx - abovePx - belowPx) / widthMm,
  );
  const plate = { x: sidePx, y: abovePx, width: lengthMm * pxPerMm, height: widthMm * pxPerMm };
  const border = borderMm * pxPerMm;
  const size = coveredMm(session);
  const covered = {
    x: plate.x + border,
    y: plate.y + border,
    width: size.xMm * pxPerMm,
    height: size.yMm * pxPerMm,
  };
  return {
    widthPx: plate.width + 2 * sidePx,
    heightPx: plate.height + abovePx + belowPx,
    pxPerMm,
    plate,
    covered,
    point: (xMm, yMm) => ({
      x: covered.x + xMm * pxPerMm,
      y: covered.y + covered.height - yMm * pxPerMm,
    }),
  };
}

/** Where the name of a station is written: outside of the plate for its far and near edge, beside the dot within. */
export function labelAt(view: PlanView, { x, y }: Point, text: string): Omit<PlacedLabel, 'kind'> {
  const { plate, covered } = view;
  const left = Math.abs(x - covered.x) < 1;
  const right = Math.abs(x - covered.x - covered.width) < 1;
  const anchor = left ? 'start' : right ? 'end' : 'middle';
  const outer = left ? plate.x : right ? plate.x + plate.width : x;
  if (Math.abs(y - covered.y) < 1) return { text, x: outer, y: plate.y - 7, anchor };
  if (Math.abs(y - covered.y - covered.height) < 1) {
    return { text, x: outer, y: plate.y + plate.height + 16, anchor };
  }
  return { text, x: left ? x + 9 : right ? x - 9 : x + 9, y: y - 9, anchor: right ? 'end' : 'start' };
}
