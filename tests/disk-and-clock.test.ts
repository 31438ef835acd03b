import { spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, expect, onTestFinished, test } from 'vitest';
import { readRecording } from '../daemon/recording/reader.ts';
import { verifyRecording } from '../daemon/recording/verify.ts';
import { setupSchema } from '../shared/session/setup.ts';
import { DaemonProcess } from './tools/daemon-process.ts';
import { LevelPlayer } from './tools/level-player.ts';
import { PageClient } from './tools/page-client.ts';
import { PtyPair } from './tools/pty-pair.ts';
import { mountSmallDisk } from './tools/small-disk.ts';
import { testFolder } from './tools/test-folder.ts';

let daemon: DaemonProcess | undefined;
afterEach(() => daemon?.stop());

const takeNow = { do: 'take', by: 'key', insist: true } as const;

async function levelOnCable(everyMs: number): Promise<{ cable: PtyPair; level: LevelPlayer }> {
  const cable = new PtyPair(testFolder());
  await cable.plugIn();
  const level = new LevelPlayer(cable.a, 7, everyMs);
  onTestFinished(async () => {
    await level.stop();
    await cable.pullOut();
  });
  return { cable, level };
}

function setupOn(port: string) {
  return setupSchema.parse({
    kind: 'way',
    part: 'Test bench 4',
    surface: 'way',
    lengthMm: 9_900,
    baseMm: 100,
    stations: 100,
    back: 'no',
    instrument: { name: 'level', source: 'cable', port, profile: 'line-decimal', unit: 'um/m' },
  });
}

async function recordingIn(folder: string) {
  const [name] = readdirSync(folder).filter((file) => file.endsWith('.jsonl'));
  const path = join(folder, name!);
  return { report: await verifyRecording(path), events: (await readRecording(path)).events };
}

/** What the command says on stderr when it can't start. */
function refusedStart(folder: string): string {
  const args = ['dist/wayscribe.js', 'serve', '--folder', folder, '--port', '0'];
  const { status, stderr } = spawnSync(process.execPath, args, { encoding: 'utf8', timeout: 30_000 });
  expect(status).toBe(1);
  return stderr;
}

test('on a full disk it says so, refuses takes, loses none that was shown, and goes on when there is room', async (context) => {
  const disk = testFolder();
  if (!mountSmallDisk(disk, 'size=1m')) context.skip('a small disk can only be mounted by root on Linux');
  const { cable } = await levelOnCable(5);
  const ballast = join(disk, 'ballast');
  writeFileSync(ballast, Buffer.alloc(900 << 10));
  daemon = await DaemonProcess.start('serve', '--folder', disk);
  const page = await PageClient.open(daemon.url);
  expect(await page.ask({ do: 'start', setup: setupOn(cable.b) })).toBeNull();
  await page.until(() => page.last('live') !== undefined);
  expect(await page.ask(takeNow)).toBeNull();

  await page.until(() => page.last('refused') !== undefined);
  expect(page.last('refused')?.error).toMatchObject({ code: 'recording.full' });
  expect(page.last('refused')?.error.message).toContain('the disk is full');
  // Where a whole batch of readings found no room, a take or two may still fit.
  let refusal = await page.ask(takeNow);
  while (refusal === null) refusal = await page.ask(takeNow);
  expect(refusal).toMatchObject({
    code: 'recording.full',
    remedy: expect.stringContaining('room'),
  });
  const safe = page.events.filter(({ type }) => type === 'take').length;
  expect(safe).toBeGreaterThan(0);
  const told = page.messages.filter(({ type }) => type === 'refused').length;
  expect(told).toBeLessThan(5);

  rmSync(ballast);
  const before = page.messages.length;
  await page.until(() => page.messages.slice(before).some(({ type }) => type === 'live'));
  expect(await page.ask(takeNow)).toBeNull();
  expect(await page.ask({ do: 'finish' })).toBeNull();
  const shown = page.events.filter(({ type }) => type === 'take');
  expect(shown).toHaveLength(safe + 1);
  page.close();
  await daemon.stop();

  const { report, events } = await recordingIn(disk);
  expect(report).toMatchObject({ problems: [], closed: true });
  expect(events.filter(({ type }) => type === 'take')).toEqual(shown);
});

test('in a folder that may not be written it does not start, and says why', (context) => {
  const folder = join(testFolder(), 'recordings');
  mkdirSync(folder);
  // Root may write everywhere but on a disk that is read-only.
  if (process.getuid?.() === 0) {
    if (!mountSmallDisk(folder, 'ro,size=64k')) context.skip('no disk can be mounted here');
  } else chmodSync(folder, 0o555);
  const said = refusedStart(folder);
  expect(said).toContain(folder);
  expect(said).toContain('may not be written');
  expect(said).toContain('choose another folder');
});

test('a second daemon on the same folder is refused, and told who has it', async () => {
  const folder = testFolder();
  daemon = await DaemonProcess.start('serve', '--folder', folder);
  const said = refusedStart(folder);
  expect(said).toContain(`process ${daemon.pid}`);
  // The first one has noticed nothing.
  const page = await PageClient.open(daemon.url);
  page.close();
  await daemon.stop('SIGKILL');
  daemon = await DaemonProcess.start('serve', '--folder', folder);
});

test('a clock that is set forth and back by an hour in mid-walk disturbs nothing', async () => {
  const folder = testFolder();
  const { cable, level } = await levelOnCable(20);
  daemon = await DaemonProcess.startWith(
    ['--import', 'tsx', '--import', './tests/tools/shifted-clock.ts'],
    ...['serve', '--folder', folder],
  );
  const page = await PageClient.open(daemon.url);
  expect(await page.ask({ do: 'start', setup: setupOn(cable.b) })).toBeNull();
  const counted = () => page.events.filter(({ type }) => type === 'take').length;
  for (const k of [1, 2, 3, 4]) {
    level.order({ do: 'lift' });
    await page.until(() => page.last('live')?.live.steadiness === 'moving');
    level.order({ do: 'stand', rest: 10 * k });
    // In the middle of settling.
    if (k > 1) process.kill(daemon.pid, 'SIGUSR2');
    await page.until(() => counted() === k);
  }
  // Set back before the survey began, a new one still finds a name of its own and stands in the list.
  expect(await page.ask({ do: 'finish' })).toBeNull();
  const { id } = page.header!;
  expect(await page.ask({ do: 'start', setup: setupOn(cable.b) })).toBeNull();
  expect(page.header!.id).not.toBe(id);
  const listed = (await (await fetch(`${daemon.url}api/recordings`)).json()) as { id: string }[];
  expect(listed.map((one) => one.id).sort()).toEqual([id, page.header!.id].sort());
  page.close();
  await daemon.stop();

  const path = join(folder, `${id}.jsonl`);
  expect(await verifyRecording(path)).toMatchObject({ problems: [], closed: true });
  const { header, events } = await readRecording(path);
  const takes = events.filter((event) => event.type === 'take');
  const hours = takes.map(({ t }) => Math.round((t - header.t) / 3600_000));
  expect(hours).toEqual([0, 1, -1, 0]);
  const clocks = events.map(({ m }) => m);
  expect(clocks).toEqual(clocks.toSorted((a, b) => a - b));
  expect(events.filter(({ type }) => type === 'gap')).toEqual([]);
});
