import { spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { createWriteStream } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { finished } from 'node:stream/promises';
import { NO_LINK, seal } from '../../daemon/recording/chain.ts';
import { openBrowser } from '../tools/browser.ts';
import { DaemonProcess } from '../tools/daemon-process.ts';
import { reading, sampleHeader, take } from '../tools/sample-recording.ts';
import type { BenchRow } from './bench.ts';

const readings = 1_000_000;
const steps = 6;
const id = 'million';

/** Writes a sound recording of a million readings at 200 a second, with a take every so often. */
async function writeMillion(path: string): Promise<void> {
  const file = createWriteStream(path, { highWaterMark: 1 << 22 });
  let [link, seq, text] = [NO_LINK, 0, ''];
  const add = (line: object) => {
    const sealed = seal(JSON.stringify(line), link);
    link = sealed.link;
    text += `${sealed.text}\n`;
  };
  const event = (one: object) => {
    seq += 1;
    add({ seq, t: sampleHeader.t + 5 * seq, m: 5 * seq, ...one });
  };
  add({ ...sampleHeader, id });
  for (let k = 0; k < steps; k += 1) {
    for (let n = 0; n < readings / steps; n += 1) {
      event(reading(10 * k + (n % 7) / 10));
      if (text.length < 1 << 22) continue;
      if (!file.write(text)) await once(file, 'drain');
      text = '';
    }
    // The last seven readings hold 0.0 … 0.6 once each, whatever the first of them is.
    event(take(k, 10 * k + 0.3, seq - 6, seq));
  }
  event({ type: 'end' });
  file.end(text);
  await finished(file);
}

/** A recording of a million readings: reduced on the command line, and opened in the page until it is drawn. */
export async function millionRows(): Promise<BenchRow[]> {
  const folder = await mkdtemp(join(tmpdir(), 'wayscribe-'));
  const path = join(folder, `${id}.jsonl`);
  await writeMillion(path);
  const startReduce = performance.now();
  const { status, stderr } = spawnSync(process.execPath, ['dist/wayscribe.js', 'reduce', path, '--json']);
  if (status !== 0) throw new Error(String(stderr));
  const reduceMs = performance.now() - startReduce;

  const daemon = await DaemonProcess.start('serve', '--folder', folder);
  const browser = await openBrowser();
  const page = await browser.newPage();
  await page.goto(daemon.url);
  const replay = page.getByRole('button', { name: 'Replay' });
  await replay.waitFor();
  const startOpen = performance.now();
  await replay.click();
  await page.locator('[data-testid="player-time"]').waitFor();
  await page.getByTestId('to-end').click();
  await page.locator('[data-testid="root"][data-view="result"]').waitFor({ timeout: 60_000 });
  const openMs = performance.now() - startOpen;
  await browser.close();
  await daemon.stop();
  await rm(folder, { recursive: true, force: true });
  return [
    { what: 'a recording of 1,000,000 readings reduced', value: reduceMs, unit: 'ms', wanted: '≤ 3000 ms' },
    { what: 'the same opened in the page to its end', value: openMs, unit: 'ms', wanted: '≤ 5000 ms' },
  ];
}
