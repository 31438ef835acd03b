import { execFileSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { publishedSchemas } from '../daemon/publish/published.ts';
import { readRecording } from '../daemon/recording/reader.ts';
import { setupSchema } from '../shared/session/setup.ts';
import { Archive } from './tools/archive.ts';
import { DaemonProcess } from './tools/daemon-process.ts';
import { Mosquitto } from './tools/mosquitto.ts';
import { PageClient } from './tools/page-client.ts';
import { testFolder } from './tools/test-folder.ts';

const slopes = [12, 7.5, 3, -2, -6.5, -9, -4, 1, 5.5, 8];
const setup = setupSchema.parse({
  kind: 'way',
  part: 'Constructed bed',
  surface: 'front way',
  lengthMm: 2000,
  baseMm: 200,
  stations: slopes.length + 1,
  back: 'no',
  instrument: { name: 'level', source: 'typed', unit: 'um/m' },
});

let folder = '';
let broker: Mosquitto;
let archive: Archive;
let daemon: DaemonProcess;
let page: PageClient;

beforeEach(async () => {
  folder = testFolder();
  broker = await Mosquitto.in(testFolder());
  await broker.start();
  archive = await Archive.open(broker.address, 'shop/#', 'archive');
  await startDaemon();
});

afterEach(async () => {
  page.close();
  await daemon.stop();
  await archive.close();
  await broker.stop();
});

async function startDaemon(): Promise<void> {
  const where = ['--broker', broker.address, '--topic', 'shop', '--bench', 'bench-1'];
  daemon = await DaemonProcess.start('serve', '--folder', folder, ...where);
  page = await PageClient.open(daemon.url);
}

async function killDaemon(): Promise<void> {
  await daemon.stop('SIGKILL');
  page.close();
}

async function type(from: number, to: number): Promise<void> {
  for (const slope of slopes.slice(from, to)) {
    expect(await page.ask({ do: 'type', text: String(slope) })).toBeNull();
  }
}

const recordingFile = () => join(folder, readdirSync(folder).find((name) => name.endsWith('.jsonl'))!);

/** What the recording on disk holds that is to be told: number and kind, in order. */
async function onRecord(): Promise<{ seq: number; kind: string }[]> {
  const { events } = await readRecording(recordingFile());
  const kinds: Record<string, string> = { take: 'take', void: 'void', end: 'result' };
  return events.flatMap(({ seq, type }) => (kinds[type] ? [{ seq, kind: kinds[type] }] : []));
}

/** What came to the archive, each message once, in the order of coming. */
function came(): { seq: number; kind: string }[] {
  const topicOf = new Map(archive.received.map(({ topic, text }) => [JSON.parse(text).id, topic]));
  return archive.messages.map(({ id, seq }) => ({
    seq: seq as number,
    kind: topicOf.get(id as string)!.replace('shop/bench-1/', ''),
  }));
}

/** A repeat, whoever made it, is the same to the last byte. */
const differentTexts = () => new Set(archive.received.map(({ text }) => text)).size;

const ended = () =>
  archive.until((messages) => messages.some((message) => 'result' in message && message.result !== null));

test('through an outage of the broker and a kill of the daemon nothing is lost and nothing is doubled', async () => {
  expect(await page.ask({ do: 'start', setup })).toBeNull();
  await type(0, 3);
  await archive.until((messages) => messages.length === 3);

  await broker.stop();
  await type(3, 5);
  const wrong = page.session!.takes.at(-1)!.event.seq;
  expect(await page.ask({ do: 'void', take: wrong, reason: 'a chip under the foot' })).toBeNull();
  await type(4, 6);
  await killDaemon();
  await startDaemon();
  await type(6, 8);
  await broker.start();

  await type(8, 10);
  expect(await page.ask({ do: 'finish' })).toBeNull();
  await ended();
  expect(came()).toEqual(await onRecord());
  expect(came().map(({ kind }) => kind)).toEqual([
    ...Array(5).fill('take'),
    'void',
    ...Array(6).fill('take'),
    'result',
  ]);
  expect(differentTexts()).toBe(13);
});

test('killed again and again just when a message has gone out, every message comes, and a repeat is the same', async () => {
  expect(await page.ask({ do: 'start', setup })).toBeNull();
  for (let k = 0; k < 4; k += 1) {
    await type(2 * k, 2 * k + 2);
    await archive.until((messages) => messages.length > 2 * k);
    await killDaemon();
    await startDaemon();
  }
  await type(8, 10);
  expect(await page.ask({ do: 'finish' })).toBeNull();
  await ended();
  expect(came()).toEqual(await onRecord());
  expect(differentTexts()).toBe(slopes.length + 1);
});

test('messages are as documented, and the last result stays with the broker', async () => {
  expect(await page.ask({ do: 'start', setup })).toBeNull();
  await type(0, 10);
  expect(await page.ask({ do: 'finish' })).toBeNull();
  await ended();
  for (const { topic, text } of archive.received) {
    const kind = topic.split('/').at(-1) as keyof typeof publishedSchemas;
    publishedSchemas[kind].strict().parse(JSON.parse(text));
  }
  const [first] = archive.messages;
  expect(first).toMatchObject({
    bench: 'bench-1',
    part: 'Constructed bed',
    value: 12,
    unit: 'um/m',
    by: 'typed',
  });

  const late = await Archive.open(broker.address, 'shop/+/result');
  await late.until((messages) => messages.length > 0);
  expect(late.received[0]).toMatchObject({ topic: 'shop/bench-1/result', retained: true });
  const reduced = execFileSync(process.execPath, ['dist/wayscribe.js', 'reduce', recordingFile(), '--json']);
  expect(late.messages[0]!.result).toEqual(JSON.parse(String(reduced)));
  await late.close();
});
