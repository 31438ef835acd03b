import { readFileSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { WebSocket } from 'ws';
import { demoSetup } from '../../daemon/simulate/scenario.ts';
import { DaemonProcess } from '../tools/daemon-process.ts';
import { PageClient } from '../tools/page-client.ts';
import type { BenchRow } from './bench.ts';

const viewers = 50;
const stalled = 5;
const rounds = 4;
const notesARound = 100;
/** So much is told that no buffer of the system can hold it for those who don't read. */
const longNote = 'n'.repeat(2000);
const longNotes = 6000;

interface Viewer {
  readonly socket: WebSocket;
  heard: number;
}

async function viewer(url: string): Promise<Viewer> {
  const socket = new WebSocket(`${url.replace('http', 'ws').replace('localhost', '127.0.0.1')}ws`);
  const one: Viewer = { socket, heard: 0 };
  socket.on('error', () => {});
  socket.on('message', (data: Buffer) => {
    if (data.includes('"type":"note"')) one.heard += 1;
  });
  await new Promise((resolve) => socket.once('open', resolve));
  return one;
}

/** How long it takes until every viewer has a note that was asked for, ms, median. */
async function delayMs(page: PageClient, all: readonly Viewer[]): Promise<number> {
  const delays: number[] = [];
  for (let k = 0; k < notesARound; k += 1) {
    const due = all.map(({ heard }) => heard + 1);
    const start = performance.now();
    await page.ask({ do: 'note', text: `note ${k}` });
    while (all.some(({ heard }, v) => heard < due[v]!)) await new Promise((resolve) => setImmediate(resolve));
    delays.push(performance.now() - start);
  }
  return delays.toSorted((a, b) => a - b)[delays.length >> 1]!;
}

function memoryMiB(pid: number): number {
  const [, kiB] = /VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'latin1')) ?? [];
  return Number(kiB) / 1024;
}

/** Fifty pages, five of which have stopped to read: what the others notice, and what that costs the daemon. */
export async function viewersRows(): Promise<BenchRow[]> {
  const folder = await mkdtemp(join(tmpdir(), 'wayscribe-'));
  const daemon = await DaemonProcess.start('demo', '--folder', folder);
  const page = await PageClient.open(daemon.url);
  const refusal = await page.ask({ do: 'start', setup: demoSetup as never });
  if (refusal) throw new Error(refusal.message);
  const all: Viewer[] = [];
  for (let k = 0; k < viewers; k += 1) all.push(await viewer(daemon.url));
  const [asleep, awake] = [all.slice(0, stalled), all.slice(stalled)];
  await delayMs(page, awake);
  const ratios: number[] = [];
  let mostMiB = 0;
  const before = memoryMiB(daemon.pid);
  for (let round = 0; round < rounds; round += 1) {
    const free = await delayMs(page, awake);
    for (const { socket } of asleep) socket.pause();
    for (let k = 0; k < longNotes / rounds; k += 50) {
      await Promise.all(Array.from({ length: 50 }, () => page.ask({ do: 'note', text: longNote })));
      mostMiB = Math.max(mostMiB, memoryMiB(daemon.pid));
    }
    ratios.push((await delayMs(page, awake)) / free);
    for (const { socket } of asleep) socket.resume();
  }
  const kept = awake.filter(({ socket }) => socket.readyState === WebSocket.OPEN).length;
  for (const { socket } of all) socket.terminate();
  page.close();
  await daemon.stop();
  await rm(folder, { recursive: true, force: true });
  return [
    {
      what: `${viewers} pages, delay with ${stalled} of them stalled / without`,
      value: ratios.toSorted((a, b) => a - b)[ratios.length >> 1]!,
      unit: '×',
      wanted: '≤ 1.1 ×',
    },
    {
      what: 'the same, memory of the daemon more',
      value: mostMiB - before,
      unit: 'MiB',
      wanted: '≤ 128 MiB',
    },
    {
      what: 'the same, pages that were cut off without being stalled',
      value: viewers - stalled - kept,
      unit: '',
      wanted: '0',
    },
  ];
}
