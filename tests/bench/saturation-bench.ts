import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { WebSocket } from 'ws';
import { setupSchema } from '../../shared/session/setup.ts';
import { DaemonProcess } from '../tools/daemon-process.ts';
import { PageClient } from '../tools/page-client.ts';
import { PtyPair } from '../tools/pty-pair.ts';
import type { BenchRow } from './bench.ts';

const readings = 150_000;
const rounds = 3;
const last = '-054321';

/** A set-up that listens to a level on this port. */
export function levelOn(port: string) {
  return setupSchema.parse({
    kind: 'way',
    part: 'Bench',
    surface: 'way',
    lengthMm: 9_900,
    baseMm: 100,
    stations: 100,
    back: 'no',
    instrument: { name: 'level', source: 'cable', port, profile: 'line-decimal', unit: 'um/m' },
  });
}

function child(script: string, ...args: string[]): ChildProcess {
  return spawn(process.execPath, ['--import', 'tsx', `tests/bench/${script}.ts`, ...args], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
}

/** Seconds from the first reading that is heard to the last one. */
async function poured(port: string, heard: Promise<{ firstMs: number; lastMs: number }>): Promise<number> {
  const pouring = child('pour', port, String(readings), last);
  const { firstMs, lastMs } = await heard;
  if (pouring.exitCode === null) await once(pouring, 'exit');
  return (lastMs - firstMs) / 1000;
}

async function bareS(cable: PtyPair): Promise<number> {
  const pipe = child('bare-pipe', cable.b);
  const [url] = await once(pipe.stdout!, 'data');
  const socket = new WebSocket(String(url).trim());
  await once(socket, 'open');
  let firstMs = 0;
  const heard = new Promise<{ firstMs: number; lastMs: number }>((resolve) => {
    socket.on('message', (data) => {
      firstMs ||= performance.now();
      if (JSON.parse(String(data)).value === Number(last)) resolve({ firstMs, lastMs: performance.now() });
    });
  });
  const seconds = await poured(cable.a, heard);
  socket.terminate();
  pipe.kill();
  await once(pipe, 'exit');
  return seconds;
}

async function oursS(cable: PtyPair, folder: string): Promise<number> {
  const daemon = await DaemonProcess.start('serve', '--folder', folder);
  const page = await PageClient.open(daemon.url);
  const refusal = await page.ask({ do: 'start', setup: levelOn(cable.b) });
  if (refusal) throw new Error(refusal.message);
  await page.until(
    () =>
      page.last('instruments')?.instruments[0]?.link === 'open' ||
      page.messages.some((m) => m.type === 'hello' && m.instruments[0]?.link === 'open'),
  );
  let firstMs = 0;
  const heard = page
    .until(() => {
      const live = page.last('live');
      if (live) firstMs ||= performance.now();
      return live?.live.value === Number(last);
    })
    .then(() => ({ firstMs, lastMs: performance.now() }));
  const seconds = await poured(cable.a, heard);
  page.close();
  await daemon.stop();
  return seconds;
}

/** Readings a second from the pseudo-terminal to the page when they come as fast as can be, against a bare pipe. */
export async function saturationRows(): Promise<BenchRow[]> {
  const folder = await mkdtemp(join(tmpdir(), 'wayscribe-'));
  const cable = new PtyPair(folder);
  await cable.plugIn();
  const bare: number[] = [];
  const ours: number[] = [];
  for (let k = 0; k < rounds; k += 1) {
    bare.push(await bareS(cable));
    ours.push(await oursS(cable, join(folder, `recordings-${k}`)));
  }
  await cable.pullOut();
  await rm(folder, { recursive: true, force: true });
  const perS = (seconds: number[]) => readings / Math.min(...seconds);
  return [
    { what: 'bare port → lines → socket, at saturation', value: perS(bare), unit: 'readings/s', wanted: '' },
    { what: 'port → recording → page, at saturation', value: perS(ours), unit: 'readings/s', wanted: '' },
    { what: 'the same / the bare pipe', value: perS(ours) / perS(bare), unit: '×', wanted: '≥ 0.6 ×' },
  ];
}
