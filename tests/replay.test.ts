import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Daemon, startDaemon } from '../daemon/daemon.ts';
import { readRecording } from '../daemon/recording/reader.ts';
import { verifyRecording } from '../daemon/recording/verify.ts';
import { ReplayedLevel } from '../daemon/replay/replayed-level.ts';
import { fold } from '../shared/session/fold.ts';
import { resultOf } from '../shared/session/result.ts';
import { PageClient } from './tools/page-client.ts';

const files = (await readdir('recordings')).filter((name) => name.endsWith('.jsonl'));

describe.each(files)('recording %s', (file) => {
  const path = join('recordings', file);
  let folder = '';
  let daemon: Daemon;
  let page: PageClient;

  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'wayscribe-'));
    daemon = await startDaemon({ mode: 'serve', folder, port: 0, replay: path });
    page = await PageClient.open(daemon.url);
  });
  afterAll(async () => {
    page.close();
    await daemon.close();
    await rm(folder, { recursive: true, force: true });
  });

  const text = () => `${JSON.stringify(resultOf(page.session!), null, 2)}\n`;
  const golden = () => readFile(path.replace('.jsonl', '.result.json'), 'utf8');

  test('is whole, and every take is the mean of its readings', async () => {
    const { problems, closed } = await verifyRecording(path);
    expect(problems).toEqual([]);
    expect(closed).toBe(true);
  });

  test('comes to its golden result when it is hurried to the end, byte for byte', async () => {
    expect(await page.ask({ do: 'to-end' })).toBeNull();
    await page.until(() => page.session!.ended);
    expect(text()).toBe(await golden());
  });

  test('comes to the same step by step, and at every step shows what was known then', async () => {
    const { header, events } = await readRecording(path, { skipReadings: true });
    expect(await page.ask({ do: 'rewind' })).toBeNull();
    await page.until(() => page.events.length === 0);
    while (!page.session!.ended) {
      const before = page.events.length;
      expect(await page.ask({ do: 'step' })).toBeNull();
      await page.until(() => page.events.length > before);
      const then = events.filter(({ seq }) => seq <= page.events.at(-1)!.seq);
      expect(page.session).toEqual(fold(header, then));
    }
    expect(text()).toBe(await golden());
  });

  test('comes to the same when it is played, a hundred times as fast', async () => {
    expect(await page.ask({ do: 'rewind' })).toBeNull();
    await page.until(() => page.events.length === 0);
    expect(await page.ask({ do: 'speed', speed: 100 })).toBeNull();
    expect(await page.ask({ do: 'play' })).toBeNull();
    await page.until(() => page.session!.ended);
    expect(text()).toBe(await golden());
    expect(page.messages.some(({ type }) => type === 'live')).toBe(true);
  });

  test('hands the recording to a page, which plays it by itself', async () => {
    const response = await fetch(new URL('api/replayed', daemon.url));
    expect(await response.text()).toBe(await readFile(path, 'utf8'));
  });

  test('takes no takes while it is played', async () => {
    expect(await page.ask({ do: 'take', by: 'key' })).toMatchObject({
      code: 'command.refused',
      place: 'replay',
    });
  });

  test('its level says again what it said, and was steady whenever a steady take was made', async () => {
    const { header, events } = await readRecording(path);
    const [level] = await ReplayedLevel.allOf(header);
    if (!level) throw new Error('no level');
    const said: (number | null)[] = [];
    level.needle.live$.subscribe(({ value }) => said.push(value));
    const heard: (number | null)[] = [];
    for (const event of events) {
      if (event.type === 'reading') {
        heard.push(event.value);
        level.say(event);
        await new Promise((resolve) => setImmediate(resolve));
      }
      if (event.type === 'take' && event.steadiness === 'steady') {
        const { window } = level.needle.now;
        expect(window.steadiness).toBe('steady');
        expect(window.mean).toBe(event.value);
        expect(window.spread).toBe(event.spread);
      }
    }
    expect(said).toEqual(heard);
    await level.stop();
  });
});

test('a recording can be played beside the daemon that writes in the same folder', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'wayscribe-'));
  const path = join('recordings', files[0]!);
  const writing = await startDaemon({ mode: 'serve', folder, port: 0 });
  const port = Number(new URL(writing.url).port);
  const playing = await startDaemon({ mode: 'serve', folder, port, replay: path });
  const page = await PageClient.open(playing.url);
  expect(page.session).not.toBeNull();
  expect((await page.ask({ do: 'resume', id: 'any' }))?.code).toBe('recording.locked');
  page.close();
  await playing.close();
  await expect(startDaemon({ mode: 'serve', folder, port: 0 })).rejects.toMatchObject({
    code: 'recording.locked',
  });
  await writing.close();
  await rm(folder, { recursive: true, force: true });
});
