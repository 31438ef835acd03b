import type { Lattice } from './lattice.ts';

type Point = readonly [xMm: number, yMm: number];
export type Segment = readonly [Point, Point];

/**
 * The line of one height over a lattice, as pieces straight across half cells. Each cell is cut into two triangles, so that a
 * piece is never in doubt; where a corner is not known there is none.
 */
export function contour(lattice: Lattice, heightUm: number): Segment[] {
  const { columns, rows, cellXMm, cellYMm } = lattice;
  const found: Segment[] = [];
  const corner = (column: number, row: number) => {
    const um = lattice.at(column, row);
    return um === null ? null : ([column * cellXMm, row * cellYMm, um] as const);
  };
  for (let row = 0; row < rows; row += 1) {
    for (let column = 0; column < columns; column += 1) {
      const [a, b] = [corner(column, row), corner(column + 1, row + 1)];
      for (const c of [corner(column + 1, row), corner(column, row + 1)]) {
        if (!a || !b || !c) continue;
        const points = [cut(a, b, heightUm), cut(b, c, heightUm), cut(c, a, heightUm)].filter(
          (point) => point !== null,
        );
        if (points.length === 2) found.push([points[0]!, points[1]!]);
      }
    }
  }
  return found;
}

/** Pieces that meet, joined into lines; a line that runs round ends where it begins. */
export function joined(pieces: readonly Segment[]): Point[][] {
  const key = ([x, y]: Point) => `${x.toFixed(6)} ${y.toFixed(6)}`;
  const open = new Set(pieces);
  const at = new Map<string, Segment[]>();
  for (const piece of pieces) for (const end of piece) at.set(key(end), [...(at.get(key(end)) ?? []), piece]);
  const next = (end: Point): Point | null => {
    const piece = at.get(key(end))?.find((each) => open.has(each));
    if (!piece) return null;
    open.delete(piece);
    return key(piece[0]) === key(end) ? piece[1] : piece[0];
  };
  const lines: Point[][] = [];
  for (const piece of pieces) {
    if (!open.delete(piece)) continue;
    const line: Point[] = [...piece];
    for (let end = next(piece[1]); end; end = next(end)) line.push(end);
    for (let end = next(piece[0]); end; end = next(end)) line.unshift(end);
    lines.push(line);
  }
  return lines;
}

type Corner = readonly [xMm: number, yMm: number, um: number];

/** Where an edge passes the height; a corner that lies on it counts as above. */
function cut(from: Corner, to: Corner, heightUm: number): Point | null {
  if (from[2] >= heightUm === to[2] >= heightUm) return null;
  const share = (heightUm - from[2]) / (to[2] - from[2]);
  return [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])];
}
