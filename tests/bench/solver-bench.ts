import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { inverse, Matrix } from 'ml-matrix';
import { adjust } from '../../shared/adjust/adjust.ts';
import { reduce } from '../../shared/reduce.ts';
import type { Sheet } from '../../shared/sheet/sheet.ts';
import { farCorner, farCornerError, grid } from '../adjust/grid.ts';
import { sheetOf, stationRow, stepped } from '../adjust/sheets.ts';
import type { BenchRow } from './bench.ts';

/** The same survey after one more reading. */
function oneMore(sheet: Sheet): Sheet {
  const [walk, ...others] = sheet.walks;
  const readings = [...walk!.readings, walk!.readings[walk!.readings.length >> 1]!];
  return { ...sheet, walks: [{ ...walk!, readings }, ...others] };
}

function msOf(work: () => unknown): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

function median(values: number[]): number {
  return values.toSorted((a, b) => a - b)[values.length >> 1]!;
}

function medianMs(runs: number, work: () => unknown): number {
  return median(Array.from({ length: runs }, () => msOf(work)));
}

/** Dense normal equations and their inverse, for the size of the difference that sparseness makes. */
function dense(n: number): void {
  const normal = Matrix.zeros(n * n, n * n);
  const couple = (a: number, b: number) => {
    for (const [p, q, value] of [
      [a, a, 1],
      [b, b, 1],
      [a, b, -1],
      [b, a, -1],
    ] as const) {
      normal.set(p, q, normal.get(p, q) + value);
    }
  };
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      if (i > 0) couple((i - 1) * n + j, i * n + j);
      if (j > 0) couple(i * n + j - 1, i * n + j);
    }
  }
  inverse(normal.subMatrix(1, n * n - 1, 1, n * n - 1));
}

function way(stations: number): Sheet {
  const row = stationRow('F', stations - 1, 100);
  const readings = stepped(row.names, 100, (k) => Math.sin(k / 9) * 10);
  return sheetOf({
    kind: 'way',
    stations: row.stations,
    lines: { front: row.names },
    walks: [
      { id: 'out', sigma: 1, readings },
      { id: 'back', sigma: 1, readings: readings.toReversed() },
    ],
  });
}

/** Largest memory, MiB, of a process of its own that reduces the grid once. */
function peakMemory(n: number): number {
  const here = fileURLToPath(import.meta.url);
  const { stdout } = spawnSync(process.execPath, [...process.execArgv, here, '--peak', String(n)], {
    encoding: 'utf8',
  });
  return Number(stdout);
}

export function solverRows(): BenchRow[] {
  const rows: BenchRow[] = [];
  const row = (what: string, value: number, unit: string, limit: number, atLeast = false) => {
    rows.push({ what, value, unit, wanted: `${atLeast ? '≥' : '≤'} ${limit} ${unit}`.trim() });
  };

  const plate = grid(30, 'plate');
  const more = oneMore(plate);
  row(
    '30 × 30 grid, everything, first call',
    msOf(() => reduce(plate)),
    'ms',
    200,
  );
  for (let warm = 0; warm < 20; warm++) reduce(more);
  row(
    '30 × 30 grid, everything, one more reading',
    medianMs(15, () => reduce(more)),
    'ms',
    10,
  );
  const sparse = medianMs(15, () => adjust(more));
  row('30 × 30 grid, adjustment alone', sparse, 'ms', 10);
  row('ml-matrix inverse of the same / adjustment', medianMs(3, () => dense(30)) / sparse, '×', 50, true);

  const hundred = oneMore(way(100));
  for (let warm = 0; warm < 200; warm++) reduce(hundred);
  row(
    'way of 100 stations out and back, everything',
    medianMs(101, () => reduce(hundred)),
    'ms',
    1,
  );

  const grid100 = oneMore(grid(100, 'plate'));
  reduce(grid100);
  row(
    '100 × 100 grid, everything, one more reading',
    medianMs(9, () => reduce(grid100)),
    'ms',
    150,
  );
  const at100 = medianMs(9, () => adjust(grid100));
  row('100 × 100 grid, adjustment alone', at100, 'ms', 150);
  const grid316 = oneMore(grid(316, 'plate'));
  row(
    '316 × 316 grid, everything, one more reading',
    medianMs(5, () => reduce(grid316)),
    'ms',
    3000,
  );
  const at316 = medianMs(5, () => adjust(grid316));
  row('316 × 316 grid, adjustment alone', at316, 'ms', 3000);
  row(
    'growth exponent of the adjustment in the stations',
    Math.log(at316 / at100) / Math.log(9.9856),
    '',
    1.65,
  );
  row('316 × 316 grid, everything, peak memory of the process', peakMemory(316), 'MiB', 400);
  for (const n of Object.keys(farCorner).map(Number)) {
    row(
      `${n} × ${n} grid, far corner's variance, relative error`,
      farCornerError(adjust(grid(n)), n),
      '',
      1e-12,
    );
  }
  return rows;
}

if (process.argv[2] === '--peak') {
  reduce(grid(Number(process.argv[3]), 'plate'));
  console.log(process.resourceUsage().maxRSS / 1024);
}
