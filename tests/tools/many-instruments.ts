import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdir, readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { readRecording } from '../../daemon/recording/reader.ts';
import type { SessionEvent } from '../../shared/session/events.ts';
import { type Setup, setupSchema } from '../../shared/session/setup.ts';
import { DaemonProcess } from './daemon-process.ts';
import { PageClient } from './page-client.ts';
import { PtyPair } from './pty-pair.ts';

/** Clock ticks a second in which the kernel counts (proc(5)); 100 on every Linux in use. */
const ticksPerSecond = 100;

/** Processor time that a process has used, s. */
export async function usedS(pid: number): Promise<number> {
  const stat = await readFile(`/proc/${pid}/stat`, 'latin1');
  const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ');
  return (Number(fields[11]) + Number(fields[12])) / ticksPerSecond;
}

/** What became of instruments that all spoke at once. */
export interface Spoken {
  /** Frames that each has written to its port. */
  readonly sent: readonly number[];
  /** What is on record of each. */
  readonly readings: readonly (readonly Extract<SessionEvent, { type: 'reading' }>[])[];
  readonly events: readonly SessionEvent[];
  readonly path: string;
  /** Processor time of the daemon over the time that they spoke. */
  readonly share: number;
}

/**
 * Instruments on pseudo-terminals, played by a process of their own, speak into one survey of a real daemon with a page
 * that looks on.
 * @param rates readings a second of each
 */
export async function letThemSpeak(folder: string, rates: readonly number[], ms: number): Promise<Spoken> {
  const cables = await Promise.all(
    rates.map(async (_, k) => {
      const place = join(folder, `cable-${k}`);
      await mkdir(place);
      const cable = new PtyPair(place);
      await cable.plugIn();
      return cable;
    }),
  );
  let player: ChildProcess | null = null;
  let daemon: DaemonProcess | null = null;
  let page: PageClient | null = null;
  try {
    player = spawn(
      process.execPath,
      ['--import', 'tsx', 'tests/tools/play-counting.ts', ...cables.map(({ a }, k) => `${a}=${rates[k]}`)],
      { stdio: ['pipe', 'pipe', 'inherit'] },
    );
    const lines = createInterface({ input: player.stdout! });
    await once(lines, 'line');
    daemon = await DaemonProcess.start('serve', '--folder', join(folder, 'recordings'));
    page = await PageClient.open(daemon.url);
    const setup = setupFor(cables.map(({ b }) => b));
    const refusal = await page.ask({ do: 'start', setup });
    if (refusal) throw new Error(`${refusal.place}: ${refusal.message}`);
    const looking = page;
    const states = () => looking.last('instruments')?.instruments ?? [];
    await page.until(() => states().length === rates.length && states().every(({ link }) => link === 'open'));
    const before = await usedS(daemon.pid);
    const began = performance.now();
    player.stdin!.write(`go ${ms}\n`);
    const [told] = (await once(lines, 'line')) as [string];
    const sent = told.split(' ').slice(1).map(Number);
    const last = new Map<string, number | null>();
    let seen = 0;
    await page.until(() => {
      for (const message of looking.messages.slice(seen)) {
        if (message.type === 'live') last.set(message.live.from, message.live.value);
      }
      seen = looking.messages.length;
      return sent.every((count, k) => last.get(nameOf(k)) === ((count - 1) % 100_000) / 10);
    });
    const share = ((await usedS(daemon.pid)) - before) / ((performance.now() - began) / 1000);
    await page.ask({ do: 'leave' });
    const [name] = (await readdir(join(folder, 'recordings'))).filter((file) => file.endsWith('.jsonl'));
    const path = join(folder, 'recordings', name!);
    const { events } = await readRecording(path);
    const readings = rates.map((_, k) =>
      events.filter((event) => event.type === 'reading').filter(({ from }) => from === nameOf(k)),
    );
    return { sent, readings, events, path, share };
  } finally {
    page?.close();
    await daemon?.stop();
    player?.kill();
    await Promise.all(cables.map((cable) => cable.pullOut()));
  }
}

const nameOf = (k: number) => `level ${k}`;

function setupFor(ports: readonly string[]): Setup {
  const [instrument, ...others] = ports.map((port, k) => ({
    name: nameOf(k),
    source: 'cable' as const,
    port,
    profile: 'line-decimal',
    unit: 'um/m' as const,
  }));
  return setupSchema.parse({
    kind: 'way',
    part: 'Test bench',
    surface: 'way',
    lengthMm: 900,
    baseMm: 150,
    stations: 7,
    handsFree: false,
    instrument,
    others,
  });
}
