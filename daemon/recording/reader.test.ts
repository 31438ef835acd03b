import { appendFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import { reading, sampleHeader, stampOf, writeSample } from '../../tests/tools/sample-recording.ts';
import { testFolder } from '../../tests/tools/test-folder.ts';
import { readRecording, streamRecording } from './reader.ts';
import { RecordingWriter } from './writer.ts';

let path = '';

beforeEach(() => {
  path = join(testFolder(), 'a.jsonl');
});

function write(...lines: unknown[]): void {
  const texts = [sampleHeader, ...lines].map((line) =>
    typeof line === 'string' ? line : JSON.stringify(line),
  );
  writeFileSync(path, texts.map((line) => `${line}\n`).join(''));
}

const end = { seq: 2, t: 0, m: 0, type: 'end' };

describe('reading', () => {
  it('keeps everything, across the borders of chunks', async () => {
    const writer = await RecordingWriter.create(path, sampleHeader);
    // Characters of two to four bytes, so that some stand across a border; 3 MB in all.
    const texts = Array.from({ length: 900 }, (_, k) => `${k} ${'ö€\u{1f527}'.repeat(400)}`);
    await Promise.all(
      texts.map((text, k) => writer.append({ type: 'note', text }, stampOf(k), { durable: false })),
    );
    await writer.close();
    const { events } = await readRecording(path);
    expect(events.map((event) => (event.type === 'note' ? event.text : ''))).toEqual(texts);
  });

  it('passes over the stream when asked to, and over nothing else', async () => {
    await writeSample(path);
    const all = await readRecording(path);
    const kept = await readRecording(path, { skipReadings: true });
    expect(all.events.filter(({ type }) => type === 'reading')).toHaveLength(24);
    expect(kept.events).toEqual(all.events.filter(({ type }) => type !== 'reading'));
  });

  it('ignores what a later version added', async () => {
    write({ seq: 1, t: 0, m: 0, type: 'photo', digest: 'ab' }, { ...end, by: 'somebody', h: '00' });
    expect((await readRecording(path)).events).toEqual([end]);
  });

  it('passes over a torn last line', async () => {
    await writeSample(path);
    const before = await readRecording(path);
    appendFileSync(path, '{"seq":33,"t":');
    expect(await readRecording(path)).toEqual(before);
  });

  it('may be left early', async () => {
    await writeSample(path);
    const { groups } = await streamRecording(path);
    for await (const _ of groups) break;
    expect((await groups.next()).done).toBe(true);
  });
});

describe('what cannot be read', () => {
  const taken = { ...reading(1), seq: 1, t: 0, m: 0 };

  it.each([
    ['JSON that is broken', [taken, '{"seq":2', end], 3, 'is not JSON'],
    ['an empty line', ['', end], 2, 'is not JSON'],
    ['an event without a number', [{ ...end, seq: undefined }], 2, 'seq'],
    ['an event of a wrong kind', [{ ...taken, value: 'x' }], 2, 'value'],
    ['a list', [[1, 2]], 2, 'is no event'],
    ['nothing', [null], 2, 'is no event'],
    ['numbers that do not rise', [taken, end, taken], 4, 'number 1 follows number 2'],
  ])('%s: the line is named', async (_, lines, number, what) => {
    write(...lines);
    await expect(readRecording(path)).rejects.toMatchObject({
      code: 'recording.broken',
      place: `${path} line ${number}`,
      message: expect.stringContaining(what),
    });
  });

  it('bytes that are no UTF-8: the line is named', async () => {
    await writeSample(path);
    const bytes = readFileSync(path);
    bytes[bytes.indexOf('Öl')] = 0xff;
    writeFileSync(path, bytes);
    await expect(readRecording(path)).rejects.toMatchObject({ place: `${path} line 32` });
  });

  it.each([
    ['', 'is empty'],
    ['hello\n', 'is not the header of a recording'],
    ['{"recording":1}\n', 'is not the header of a recording'],
    ['{"recording":2}\n', 'is a recording of version 2'],
  ])('a file that begins with %j', async (content, what) => {
    writeFileSync(path, content);
    await expect(readRecording(path)).rejects.toMatchObject({
      code: 'recording.broken',
      message: expect.stringContaining(what),
    });
  });

  it('a file that is not there', async () => {
    await expect(readRecording(path)).rejects.toMatchObject({ code: 'recording.notFound' });
  });
});
