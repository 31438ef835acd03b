import { constants, openSync, writeSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openBrowser } from '../tools/browser.ts';
import { DaemonProcess } from '../tools/daemon-process.ts';
import { PageClient } from '../tools/page-client.ts';
import { PtyPair } from '../tools/pty-pair.ts';
import type { BenchRow } from './bench.ts';
import { levelOn } from './saturation-bench.ts';

const perS = 200;
const seconds = 15;

/** What the page showed and when it had been painted, ms since 1970. */
type Painted = [value: string, at: number][];

/**
 * From the last byte of a reading that was written to a pseudo-terminal until its number is painted in Chromium, at 200
 * readings a second. A pseudo-terminal takes no time for the wire. A number counts when a frame with it was given to the
 * screen: in the task after the frame in which it first stood on the page.
 */
export async function latencyRows(): Promise<BenchRow[]> {
  const folder = await mkdtemp(join(tmpdir(), 'wayscribe-'));
  const cable = new PtyPair(folder);
  await cable.plugIn();
  const daemon = await DaemonProcess.start('serve', '--folder', join(folder, 'recordings'));
  const client = await PageClient.open(daemon.url);
  const refusal = await client.ask({ do: 'start', setup: levelOn(cable.b) });
  if (refusal) throw new Error(refusal.message);
  client.close();
  const browser = await openBrowser();
  const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  // What the compiler of this bench calls in every function that it names.
  await page.addInitScript('globalThis.__name = (named) => named;');
  await page.goto(daemon.url);
  const port = openSync(cable.a, constants.O_WRONLY | constants.O_NOCTTY);
  const written = new Map<string, number>();
  writeSync(port, '\r\n');
  let k = 0;
  const write = () => {
    k += 1;
    // Each reading says a number of its own.
    const value = (k / 10).toFixed(1);
    writeSync(port, `+${value.padStart(7, '0')}\r\n`);
    written.set(String(Number(value)), performance.timeOrigin + performance.now());
  };
  const start = performance.now();
  const writing = setInterval(() => {
    while (k < ((performance.now() - start) / 1000) * perS) write();
  }, 1);
  await page.locator('[data-testid="live-value"]').waitFor();
  const painted: Painted = await page.evaluate(
    (ms) =>
      new Promise<[string, number][]>((resolve) => {
        const seen: [string, number][] = [];
        const channel = new MessageChannel();
        let shown = '';
        channel.port1.onmessage = () => seen.push([shown, performance.timeOrigin + performance.now()]);
        // The page changes in the frame that is about to be painted; the message comes when that is done.
        new MutationObserver(() => {
          const now = document.querySelector<HTMLElement>('[data-testid="live-value"]')?.dataset.value ?? '';
          if (now === shown) return;
          shown = now;
          channel.port2.postMessage(0);
        }).observe(document.body, { attributes: true, childList: true, subtree: true });
        setTimeout(() => resolve(seen), ms);
      }),
    seconds * 1000,
  );
  clearInterval(writing);
  await browser.close();
  await daemon.stop();
  await cable.pullOut();
  await rm(folder, { recursive: true, force: true });
  const delays = painted
    // The first second draws the page.
    .slice(20)
    .flatMap(([value, at]) => {
      const from = written.get(value);
      return from === undefined ? [] : [at - from];
    })
    .sort((a, b) => a - b);
  if (delays.length < 100) throw new Error(`only ${delays.length} numbers were painted`);
  const part = (share: number) => delays[Math.floor(share * (delays.length - 1))]!;
  return [
    {
      what: 'from the last byte to the painted number, p50',
      value: part(0.5),
      unit: 'ms',
      wanted: '≤ 20 ms',
    },
    {
      what: 'from the last byte to the painted number, p99',
      value: part(0.99),
      unit: 'ms',
      wanted: '≤ 50 ms',
    },
  ];
}
