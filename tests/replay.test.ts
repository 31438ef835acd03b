import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { startDaemon } from '../daemon/daemon.ts';
import { readRecording } from '../daemon/recording/reader.ts';
import { verifyRecording } from '../daemon/recording/verify.ts';
import { fold } from '../shared/session/fold.ts';
import { resultOf } from '../shared/session/result.ts';
import { PageClient } from './tools/page-client.ts';
import { ReplayedLevel } from './tools/replayed-level.ts';

const found = await readdir('recordings', { recursive: true });
const files = found.filter((name) => name.endsWith('.jsonl')).map((name) => join('recordings', name));

describe.each(files)('%s', (path) => {
  test('is whole, and every take is the mean of its readings', async () => {
    const { problems, closed } = await verifyRecording(path);
    expect(problems).toEqual([]);
    expect(closed).toBe(true);
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

const withResult = files.filter((path) =>
  found.includes(`${path.slice('recordings/'.length, -6)}.result.json`),
);

test.each(withResult)('%s comes to its golden result, byte for byte', async (path) => {
  const { header, events } = await readRecording(path, { skipReadings: true });
  const golden = await readFile(path.replace('.jsonl', '.result.json'), 'utf8');
  expect(`${JSON.stringify(resultOf(fold(header, events)), null, 2)}\n`).toBe(golden);
});

test('a recording is handed to a page, beside the daemon that writes in the same folder', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'wayscribe-'));
  const path = files[0]!;
  const writing = await startDaemon({ mode: 'serve', folder, port: 0 });
  const port = Number(new URL(writing.url).port);
  const playing = await startDaemon({ mode: 'serve', folder, port, replay: path });
  const response = await fetch(new URL('api/replayed', playing.url));
  expect(await response.text()).toBe(await readFile(path, 'utf8'));
  const page = await PageClient.open(playing.url);
  expect(page.session).toBeNull();
  expect((await page.ask({ do: 'resume', id: 'any' }))?.code).toBe('recording.locked');
  page.close();
  await playing.close();
  await expect(startDaemon({ mode: 'serve', folder, port: 0 })).rejects.toMatchObject({
    code: 'recording.locked',
  });
  await writing.close();
  await rm(folder, { recursive: true, force: true });
});
