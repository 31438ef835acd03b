import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { Instrument } from '../../daemon/instruments/instrument.ts';
import { MadePort } from '../../daemon/ports/made-port.ts';
import { RecordingWriter } from '../../daemon/recording/writer.ts';
import { Keeper } from '../../daemon/session/keeper.ts';
import { Needle } from '../../daemon/session/needle.ts';
import { findProfile } from '../../protocols/shipped.ts';
import { armed } from '../../shared/live/hands-free.ts';
import { sampleHeader } from '../tools/sample-recording.ts';
import type { BenchRow } from './bench.ts';

const hours = 8;
const everyMs = 20;
/** As many frames as come in one go in fast time; then everything that they set off is waited for. */
const together = 50;
const hourMs = 3600_000;

/** Least-squares slope of values an hour apart. */
function slope(values: readonly number[]): number {
  const middle = (values.length - 1) / 2;
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const up = values.reduce((sum, value, k) => sum + (k - middle) * (value - mean), 0);
  return up / values.reduce((sum, _, k) => sum + (k - middle) ** 2, 0);
}

/** Eight hours of a level that streams 50 readings a second, in fast time, onto a real disk. */
export async function eightHoursRows(): Promise<BenchRow[]> {
  const folder = mkdtempSync(join(tmpdir(), 'wayscribe-'));
  const profile = findProfile('line-decimal');
  const { instrument: setup } = sampleHeader.setup;
  const writer = await RecordingWriter.create(join(folder, 'long.jsonl'), sampleHeader);
  const port = new MadePort('made up');
  const instrument = new Instrument(setup.name, profile, port);
  const keeper = new Keeper(sampleHeader, [], writer);
  const needle = new Needle(instrument, setup, (event, stamp) => keeper.record(event, stamp), armed);
  keeper.use(needle);
  await instrument.start();
  setFlagsFromString('--expose-gc');
  const gc = runInNewContext('gc');
  const heapMiB: number[] = [];
  const handles: number[] = [];
  let nowMs = 0;
  port.feed('\r\n', { t: 0, m: 0 });
  for (let hour = 0; hour <= hours; hour += 1) {
    for (const end = hour * hourMs; nowMs < end; ) {
      for (let k = 0; k < together; k += 1) {
        nowMs += everyMs;
        const value = 12 + Math.sin(nowMs / 500);
        const stamp = { t: sampleHeader.t + nowMs, m: nowMs };
        port.feed(`+${value.toFixed(1).padStart(6, '0')}\r\n`, stamp);
      }
      // A turn of the writer: what was fed is on record.
      await keeper.record(
        { type: 'reading', from: 'level', raw: '', value: 12 },
        { t: sampleHeader.t + nowMs, m: nowMs },
      );
    }
    gc();
    heapMiB.push(process.memoryUsage().heapUsed / 2 ** 20);
    handles.push(readdirSync('/proc/self/fd').length);
  }
  await instrument.stop();
  await keeper.close();
  rmSync(folder, { recursive: true, force: true });
  // The first hour warms up.
  const [, ...warm] = heapMiB;
  return [
    {
      what: `memory over ${hours} h of streaming, slope`,
      value: slope(warm),
      unit: 'MiB/h',
      wanted: '≤ 1 MiB/h',
    },
    {
      what: 'file handles, most less fewest',
      value: Math.max(...handles) - Math.min(...handles),
      unit: '',
      wanted: '0',
    },
  ];
}
