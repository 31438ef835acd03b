import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { letThemSpeak } from '../tools/many-instruments.ts';
import type { BenchRow } from './bench.ts';

const ms = 10_000;

/** What share of one processor the daemon needs while many instruments speak at once; the built program is measured. */
export async function loadRows(): Promise<BenchRow[]> {
  const folder = mkdtempSync(join(tmpdir(), 'wayscribe-bench-'));
  try {
    const { sent, readings, share } = await letThemSpeak(folder, [1000, ...Array(8).fill(50)], ms);
    const written = sent.reduce((sum, count) => sum + count);
    const kept = readings.reduce((sum, own) => sum + own.length, 0);
    const what = 'daemon, eight instruments at 50 readings/s and one at 1,000';
    return [
      { what: `${what}: of a processor`, value: share, unit: '×', wanted: 'below 0.5' },
      { what: `${what}: recorded of those sent`, value: kept / written, unit: '×', wanted: '1' },
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
