import type { Lattice } from './lattice.ts';

/** One cell of the relief: its corners on the page, and its mean height. */
export interface ReliefCell {
  readonly corners: readonly (readonly [x: number, y: number])[];
  readonly meanUm: number;
}

export interface Relief {
  /** In the order in which they are painted: what is nearer covers what is behind it. */
  readonly cells: readonly ReliefCell[];
  readonly widthPx: number;
  readonly heightPx: number;
  readonly pxPerMm: number;
  readonly pxPerUm: number;
  /** Where a place at a height comes to lie. */
  point(xMm: number, yMm: number, um: number): readonly [x: number, y: number];
}

/** Depth goes up and to the right at 45°, half as long as breadth: a cabinet projection. */
const depth = 0.5 * Math.SQRT1_2;
/** Of the height of the page that the plate's own depth leaves, heights take this part at the most. */
const mostUpPx = 110;

/**
 * The plate as a relief in oblique projection. Lengths along x are to scale, along y halved, heights are drawn up,
 * `pxPerUm` times as large as they are.
 */
export function reliefOf(
  lattice: Lattice,
  range: { readonly lowUm: number; readonly highUm: number },
  widthPx: number,
): Relief {
  const [xMm, yMm] = [lattice.columns * lattice.cellXMm, lattice.rows * lattice.cellYMm];
  const pxPerMm = widthPx / (xMm + depth * yMm);
  const span = Math.max(range.highUm - range.lowUm, 1e-9);
  const upPx = Math.min(mostUpPx, 0.35 * widthPx);
  const pxPerUm = upPx / span;
  const heightPx = depth * yMm * pxPerMm + upPx;
  const point = (x: number, y: number, um: number) =>
    [(x + depth * y) * pxPerMm, heightPx - depth * y * pxPerMm - (um - range.lowUm) * pxPerUm] as const;
  const cells: ReliefCell[] = [];
  for (let row = lattice.rows - 1; row >= 0; row -= 1) {
    for (let column = 0; column < lattice.columns; column += 1) {
      const corners = [
        [column, row],
        [column + 1, row],
        [column + 1, row + 1],
        [column, row + 1],
      ].map(([i, j]) => ({ i: i!, j: j!, um: lattice.at(i!, j!) }));
      const heights = corners.flatMap(({ um }) => (um === null ? [] : [um]));
      if (heights.length < 4) continue;
      cells.push({
        corners: corners.map(({ i, j, um }) => point(i * lattice.cellXMm, j * lattice.cellYMm, um!)),
        meanUm: heights.reduce((sum, um) => sum + um, 0) / 4,
      });
    }
  }
  return { cells, widthPx, heightPx, pxPerMm, pxPerUm, point };
}
