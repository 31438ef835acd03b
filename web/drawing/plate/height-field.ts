import { coveredMm, type PlateSession } from './plate-session.ts';

/** Height between the stations, µm; null where not enough is known around the place. */
export type HeightField = (xMm: number, yMm: number) => number | null;

/**
 * The height everywhere on a plate from the heights of its stations. It passes through every station and along every line
 * that is known, and never goes on beyond what is known all round.
 */
export function heightField(session: PlateSession, heights: ReadonlyMap<string, number>): HeightField {
  return session.setup.pattern === 'grid' ? gridField(session, heights) : eightLineField(session, heights);
}

/** How far beyond the last station a place may lie by rounding alone, in steps. */
const rounding = 1e-9;

function within(value: number, most: number): number {
  return Math.min(Math.max(Math.floor(value), 0), most);
}

/** Bilinear between the four stations of each cell. */
function gridField(session: PlateSession, heights: ReadonlyMap<string, number>): HeightField {
  const { lines } = session.plan;
  const rows = Object.entries(lines).flatMap(([name, stations]) =>
    name.startsWith('row ') ? [stations.map((station) => heights.get(station))] : [],
  );
  const [down, right] = [rows.length - 1, (rows[0]?.length ?? 1) - 1];
  const { xMm, yMm } = coveredMm(session);
  return (x, y) => {
    const [u, v] = [(x / xMm) * right, (y / yMm) * down];
    if (!(u >= -rounding && v >= -rounding && u <= right + rounding && v <= down + rounding)) return null;
    const [i, j] = [within(u, right - 1), within(v, down - 1)];
    const [a, b, c, d] = [rows[j]?.[i], rows[j]?.[i + 1], rows[j + 1]?.[i], rows[j + 1]?.[i + 1]];
    if (a === undefined || b === undefined || c === undefined || d === undefined) return null;
    return between(between(a, b, u - i), between(c, d, u - i), v - j);
  };
}

/** Heights at even steps from one end to the other; null when one of them is not known. */
type Row = readonly number[] | null;

interface Side {
  readonly edge: Row;
  /** From the centre outwards: to the first corner, to the middle of the edge, to the last corner. */
  readonly toFirst: Row;
  readonly toMiddle: Row;
  readonly toLast: Row;
}

/**
 * In each of the sectors that the lines cut the plate into: straight from one spoke to the other along lines that run with
 * the edge, and to that, fading towards the centre, what the edge itself departs from straight. So it meets the
 * heights on all three sides of the sector. Without the centre line a sector reaches from corner to corner.
 */
function eightLineField(session: PlateSession, heights: ReadonlyMap<string, number>): HeightField {
  const { lines } = session.plan;
  const row = (line: string): (number | undefined)[] => (lines[line] ?? []).map((name) => heights.get(name));
  const whole = (values: (number | undefined)[]): Row =>
    values.length > 1 && values.every((value) => value !== undefined) ? (values as number[]) : null;
  const outwards = (line: string, end: 'first' | 'last'): Row => {
    const all = row(line);
    const middle = (all.length - 1) / 2;
    return whole(end === 'last' ? all.slice(middle) : all.slice(0, middle + 1).toReversed());
  };
  const corners = {
    NL: outwards('first diagonal', 'first'),
    FR: outwards('first diagonal', 'last'),
    NR: outwards('second diagonal', 'first'),
    FL: outwards('second diagonal', 'last'),
  };
  const side = (line: string, first: Row, last: Row, centre: string, end: 'first' | 'last'): Side => ({
    edge: whole(row(line)),
    toFirst: first,
    toMiddle: outwards(centre, end),
    toLast: last,
  });
  const near = side('near edge', corners.NL, corners.NR, 'centre across', 'first');
  const far = side('far edge', corners.FL, corners.FR, 'centre across', 'last');
  const left = side('left edge', corners.NL, corners.FL, 'centre along', 'first');
  const right = side('right edge', corners.NR, corners.FR, 'centre along', 'last');
  const { xMm, yMm } = coveredMm(session);
  return (x, y) => {
    const [u, v] = [(2 * x) / xMm - 1, (2 * y) / yMm - 1];
    const out = Math.max(Math.abs(u), Math.abs(v));
    if (!(out <= 1 + rounding)) return null;
    if (Math.abs(v) >= Math.abs(u)) return inSector(v < 0 ? near : far, out, out > 0 ? u / out : 0);
    return inSector(u < 0 ? left : right, out, v / out);
  };
}

/** @param out 0 at the centre to 1 on the edge @param along −1 at the first corner to 1 at the last */
function inSector({ edge, toFirst, toMiddle, toLast }: Side, out: number, along: number): number | null {
  if (!edge) return null;
  const [from, to, a, b] = toMiddle
    ? along < 0
      ? [toFirst, toMiddle, -1, 0]
      : [toMiddle, toLast, 0, 1]
    : [toFirst, toLast, -1, 1];
  if (!from || !to) return null;
  const share = (along - a) / (b - a);
  const straight = between(alongRow(from, out), alongRow(to, out), share);
  const departs = alongRow(edge, (along + 1) / 2) - between(from.at(-1)!, to.at(-1)!, share);
  return straight + out * departs;
}

/** The height at `share` (0 to 1) of a row, straight between its stations. */
function alongRow(row: readonly number[], share: number): number {
  const place = Math.min(Math.max(share, 0), 1) * (row.length - 1);
  const k = Math.min(Math.floor(place), row.length - 2);
  return between(row[k]!, row[k + 1]!, place - k);
}

function between(a: number, b: number, share: number): number {
  return a + share * (b - a);
}
