import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import { stampOf, writeSample } from '../../tests/tools/sample-recording.ts';
import { testFolder } from '../../tests/tools/test-folder.ts';
import { readRecording } from './reader.ts';
import { reopenRecording } from './reopen.ts';
import { verifyRecording } from './verify.ts';

const kept = { durable: true };
const EVENTS = 32;

let path = '';
let whole = Buffer.alloc(0);

beforeEach(async () => {
  path = join(testFolder(), 'a.jsonl');
  await writeSample(path);
  whole = readFileSync(path);
});

/** Offsets at which lines begin, and the end of the file. */
function lineStarts(): number[] {
  const starts = [0];
  for (let at = whole.indexOf(10); at >= 0; at = whole.indexOf(10, at + 1)) starts.push(at + 1);
  return starts;
}

async function goOn(): Promise<string> {
  const { writer, end, torn } = await reopenRecording(path);
  expect(readFileSync(path).subarray(end).toString('hex')).toBe(torn);
  await writer.append({ type: 'resumed', why: 'restart', ...(torn && { torn }) }, stampOf(99), kept);
  await writer.close();
  return torn;
}

describe('going on with a recording', () => {
  it('goes on with the numbers and the chain', async () => {
    expect(await goOn()).toBe('');
    const { events } = await readRecording(path);
    expect(events.at(-1)).toMatchObject({ type: 'resumed', seq: EVENTS + 1 });
    expect(await verifyRecording(path)).toMatchObject({ problems: [], closed: false, lines: EVENTS + 2 });
    expect(readFileSync(path).subarray(0, whole.length)).toEqual(whole);
  });

  it('changes nothing before the first append', async () => {
    writeFileSync(path, whole.subarray(0, -5));
    const { writer, torn } = await reopenRecording(path);
    await writer.close();
    expect(torn).not.toBe('');
    expect(readFileSync(path)).toEqual(whole.subarray(0, -5));
  });

  it('sets a line aside that is torn at any byte', async () => {
    const start = lineStarts().at(-2)!;
    for (let end = start; end < whole.length; end += 1) {
      writeFileSync(path, whole.subarray(0, end));
      expect(await goOn()).toBe(whole.subarray(start, end).toString('hex'));
      const { events } = await readRecording(path);
      expect(events.at(-1)).toMatchObject({ type: 'resumed', seq: EVENTS });
      expect((await verifyRecording(path)).problems).toEqual([]);
    }
  });

  it('sets a last line aside whose bytes did not all reach the disk', async () => {
    const start = lineStarts().at(-2)!;
    const holed = Buffer.from(whole).fill(0, start + 10, start + 20);
    writeFileSync(path, holed);
    expect(await goOn()).toBe(holed.subarray(start).toString('hex'));
    expect((await verifyRecording(path)).problems).toEqual([]);
  });

  it('sets zeros aside that a power cut left behind the last line', async () => {
    writeFileSync(path, Buffer.concat([whole, Buffer.alloc(4096)]));
    expect(await goOn()).toBe('00'.repeat(4096));
    expect((await verifyRecording(path)).problems).toEqual([]);
  });

  it('leaves damage further up where it is', async () => {
    const starts = lineStarts();
    const damaged = Buffer.from(whole);
    damaged[starts[5]! + 12]! ^= 1;
    writeFileSync(path, damaged);
    expect(await goOn()).toBe('');
    expect(readFileSync(path).subarray(0, whole.length)).toEqual(damaged);
    const { problems } = await verifyRecording(path);
    expect(problems.map(({ line }) => line)).toEqual([6]);
  });

  it('goes on after a header alone', async () => {
    writeFileSync(path, whole.subarray(0, lineStarts()[1]!));
    await goOn();
    expect((await readRecording(path)).events.map(({ seq }) => seq)).toEqual([1]);
  });
});

describe('what is refused', () => {
  it.each([
    ['an empty file', () => Buffer.alloc(0)],
    ['a torn header', () => whole.subarray(0, 200)],
    ['another file', () => Buffer.from('{"sheet":1}\n')],
    ['more damage at the end than a torn line', () => Buffer.concat([whole, Buffer.alloc(2 << 20, 'x\n')])],
    ['a last line longer than any', () => Buffer.concat([whole, Buffer.alloc(5 << 20, 'x')])],
  ])('%s, untouched', async (_, content) => {
    writeFileSync(path, content());
    await expect(reopenRecording(path)).rejects.toMatchObject({ code: 'recording.broken' });
    expect(readFileSync(path).equals(content())).toBe(true);
  });

  it('a file that is not there', async () => {
    await expect(reopenRecording(`${path}x`)).rejects.toMatchObject({ code: 'recording.notFound' });
  });
});
