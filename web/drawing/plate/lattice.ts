import type { HeightField } from './height-field.ts';

/** Heights at the corners of even cells over a rectangle; null where nothing is known. */
export interface Lattice {
  readonly columns: number;
  readonly rows: number;
  readonly cellXMm: number;
  readonly cellYMm: number;
  at(column: number, row: number): number | null;
}

export function latticeOf(
  field: HeightField,
  sizeMm: { readonly xMm: number; readonly yMm: number },
  columns: number,
  rows: number,
): Lattice {
  const [cellXMm, cellYMm] = [sizeMm.xMm / columns, sizeMm.yMm / rows];
  const heights = Array.from({ length: (columns + 1) * (rows + 1) }, (_, k) =>
    field((k % (columns + 1)) * cellXMm, Math.floor(k / (columns + 1)) * cellYMm),
  );
  return {
    columns,
    rows,
    cellXMm,
    cellYMm,
    at: (column, row) => heights[row * (columns + 1) + column] ?? null,
  };
}

export function knownAnywhere({ columns, rows, at }: Lattice): boolean {
  for (let row = 0; row <= rows; row += 1)
    for (let column = 0; column <= columns; column += 1) if (at(column, row) !== null) return true;
  return false;
}
