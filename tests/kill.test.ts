import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, expect, test } from 'vitest';
import { demoSetup } from '../daemon/simulate/scenario.ts';
import { setupSchema } from '../shared/session/setup.ts';
import { DaemonProcess } from './tools/daemon-process.ts';
import { PageClient } from './tools/page-client.ts';

let folder = '';
let daemon: DaemonProcess | null = null;

afterEach(async () => {
  await daemon?.stop();
  await rm(folder, { recursive: true, force: true });
});

test('killed in mid-walk and started again, it goes on at the right station with every take that was shown', async () => {
  folder = await mkdtemp(join(tmpdir(), 'wayscribe-'));
  daemon = await DaemonProcess.start('demo', '--folder', folder);
  let page = await PageClient.open(daemon.url);
  const setup = setupSchema.parse({ ...demoSetup, stations: 8 });
  expect(await page.ask({ do: 'start', setup })).toBeNull();
  expect(await page.ask({ do: 'sim-walk', on: true })).toBeNull();

  for (const killAfter of [2, 4]) {
    await page.until(() => page.session!.counted.size === killAfter);
    const shown = page.session!.takes;
    await daemon.stop('SIGKILL');
    page.close();

    daemon = await DaemonProcess.start('demo', '--folder', folder);
    page = await PageClient.open(daemon.url);
    const session = page.session!;
    expect(session.takes.slice(0, shown.length)).toEqual(shown);
    const next = session.counted.size;
    expect(session.next).toEqual({ run: 'front way out', at: [`F${next}`, `F${next + 1}`] });
    expect(page.events.at(-1)).toMatchObject({ type: 'resumed', why: 'the daemon was started again' });
    expect(await page.ask({ do: 'sim-walk', on: true })).toBeNull();
  }

  await page.until(() => page.session!.counted.size === 7);
  expect((await readdir(folder)).filter((name) => name.endsWith('.jsonl'))).toHaveLength(1);
  page.close();
});
