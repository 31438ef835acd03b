/**
 * `npm run bench`: one table of what the core costs, and bench.json with the same rows. Times are medians
 * on this machine in this run; where two are compared, both were taken in this run.
 */
import { writeFileSync } from 'node:fs';
import { eightHoursRows } from './eight-hours-bench.ts';
import { latencyRows } from './latency-bench.ts';
import { loadRows } from './load-bench.ts';
import { millionRows } from './million-bench.ts';
import { minimumZoneRows } from './minimum-zone-bench.ts';
import { replayRows } from './replay-bench.ts';
import { saturationRows } from './saturation-bench.ts';
import { solverRows } from './solver-bench.ts';
import { viewersRows } from './viewers-bench.ts';

export interface BenchRow {
  /** What was done. */
  readonly what: string;
  readonly value: number;
  readonly unit: string;
  /** What it should stay within, as text. */
  readonly wanted: string;
}

const zones = (await minimumZoneRows()).flatMap(({ name, medianMs, ratio, target }): BenchRow[] => [
  { what: name, value: medianMs, unit: 'ms', wanted: target },
  ...(ratio === undefined
    ? []
    : [{ what: `${name}, the other / ours`, value: ratio, unit: '×', wanted: target }]),
]);
const load = [
  ...(await loadRows()),
  ...(await saturationRows()),
  ...(await latencyRows()),
  ...(await viewersRows()),
  ...(await millionRows()),
  ...(await eightHoursRows()),
];
const rows = [...solverRows(), ...zones, ...replayRows(), ...load];
const table = [
  ['', 'found', 'wanted'],
  ...rows.map(({ what, value, unit, wanted }) => [what, `${shown(value)} ${unit}`.trim(), wanted]),
];
const widths = [0, 1, 2].map((column) => Math.max(...table.map((line) => line[column]!.length)));
for (const line of table) {
  console.log(
    line
      .map((cell, column) => cell.padEnd(widths[column]!))
      .join('  ')
      .trimEnd(),
  );
}
writeFileSync('bench.json', `${JSON.stringify({ node: process.version, rows }, null, 2)}\n`);

function shown(value: number): string {
  return value < 1e-3 ? value.toExponential(1) : String(Number(value.toPrecision(3)));
}
