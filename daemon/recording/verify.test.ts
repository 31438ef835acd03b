import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { beforeEach, describe, expect, it } from 'vitest';
import { reading, sampleHeader, stampOf, take, writeSample } from '../../tests/tools/sample-recording.ts';
import { testFolder } from '../../tests/tools/test-folder.ts';
import { verifyRecording } from './verify.ts';
import { RecordingWriter } from './writer.ts';

const kept = { durable: true };
const LINES = 33;

let path = '';
let whole = Buffer.alloc(0);
let lines: Buffer[] = [];

beforeEach(async () => {
  path = join(testFolder(), 'a.jsonl');
  await writeSample(path);
  whole = readFileSync(path);
  lines = whole
    .toString()
    .split(/(?<=\n)/)
    .map((line) => Buffer.from(line));
});

async function verify(bytes: Uint8Array) {
  writeFileSync(path, bytes);
  return verifyRecording(path);
}

/** Number of the line, from 1, that holds the byte at an offset. */
function lineAt(offset: number): number {
  return 1 + whole.subarray(0, offset).filter((byte) => byte === 10).length;
}

describe('a recording as it was written', () => {
  it('has no problem, and is closed', async () => {
    const report = await verify(whole);
    expect(report).toMatchObject({ lines: LINES, seq: LINES - 1, closed: true, problems: [], more: 0 });
    expect(whole.toString()).toContain(`"type":"end","h":"${report.link}"}`);
  });

  it('is open when its end was cut off at a line, which nothing in it can tell', async () => {
    for (let n = 1; n < LINES; n += 1) {
      const report = await verify(Buffer.concat(lines.slice(0, n)));
      expect(report).toMatchObject({ lines: n, closed: false, problems: [] });
    }
  });
});

describe('tampering', () => {
  // Any byte, changed to any other: the first problem is on its line.
  it('with one byte is found and its line named', async () => {
    const change = fc.record({ at: fc.nat(), by: fc.integer({ min: 1, max: 255 }) });
    await fc.assert(
      fc.asyncProperty(change, async ({ at, by }) => {
        const offset = at % whole.length;
        const bytes = Buffer.from(whole);
        bytes[offset]! ^= by;
        const { problems } = await verify(bytes);
        expect(problems[0]?.line).toBe(lineAt(offset));
        // One changed byte puts no later line in doubt, unless it made two lines of one or one of two.
        if (bytes[offset] !== 10 && whole[offset] !== 10) expect(problems).toHaveLength(1);
      }),
      { numRuns: 1000 },
    );
  });

  it('with a byte more or less is found and its line named', async () => {
    const change = fc.record({ at: fc.nat(), byte: fc.option(fc.integer({ min: 0, max: 255 })) });
    await fc.assert(
      fc.asyncProperty(change, async ({ at, byte }) => {
        const offset = at % whole.length;
        const rest = whole.subarray(byte === null ? offset + 1 : offset);
        const put = byte === null ? [] : [Buffer.of(byte)];
        const { problems } = await verify(Buffer.concat([whole.subarray(0, offset), ...put, rest]));
        // A byte put before an equal one changes the file as it would one place further on.
        expect(problems[0]?.line).toBeGreaterThanOrEqual(lineAt(offset));
        expect(problems[0]?.line).toBeLessThanOrEqual(lineAt(offset) + 1);
      }),
      { numRuns: 500 },
    );
  });

  it('with whole lines is found', async () => {
    const line = fc.nat({ max: LINES - 1 });
    const change = fc.oneof(
      fc.record({ kind: fc.constant('remove' as const), a: fc.nat({ max: LINES - 2 }), b: line }),
      fc.record({
        kind: fc.constantFrom('swap' as const, 'move' as const, 'copy' as const),
        a: line,
        b: line,
      }),
    );
    await fc.assert(
      fc.asyncProperty(change, async ({ kind, a, b }) => {
        const changed = [...lines];
        if (kind === 'remove') changed.splice(a, 1);
        else if (kind === 'copy') changed.splice(b, 0, lines[a]!);
        else if (kind === 'move') changed.splice(b, 0, ...changed.splice(a, 1));
        else [changed[a], changed[b]] = [lines[b]!, lines[a]!];
        const bytes = Buffer.concat(changed);
        fc.pre(!bytes.equals(whole));
        const { problems } = await verify(bytes);
        const first = changed.findIndex((bytes, k) => !lines[k]?.equals(bytes));
        expect(problems[0]?.line).toBe(1 + first);
      }),
      // The last line once more behind itself: nothing differs until the file should have ended.
      { numRuns: 500, examples: [[{ kind: 'copy' as const, a: LINES - 1, b: LINES - 1 }]] },
    );
  });

  it('says what was done', async () => {
    const changed = Buffer.from(whole.toString().replace('"value":14,"spread"', '"value":15,"spread"'));
    expect((await verify(changed)).problems).toEqual([
      { line: 11, seq: 10, what: 'was changed: its link does not match' },
    ]);
    const removed = Buffer.concat(lines.toSpliced(10, 1));
    expect((await verify(removed)).problems).toEqual([
      { line: 11, seq: 11, what: expect.stringContaining('number 10 is missing') },
    ]);
    const inserted = Buffer.concat(lines.toSpliced(10, 0, lines[3]!));
    expect((await verify(inserted)).problems).toEqual([
      { line: 11, seq: 3, what: 'does not belong here: it was inserted or moved' },
    ]);
    const headless = Buffer.concat(lines.slice(1));
    expect((await verify(headless)).problems[0]).toMatchObject({
      line: 1,
      what: 'is not the header of a recording',
    });
  });

  it('that makes the chain anew is found where a take is not the mean of its readings', async () => {
    const forged = join(testFolder(), 'forged.jsonl');
    const writer = await RecordingWriter.create(forged, sampleHeader);
    for (const value of [1, 2, 4]) await writer.append(reading(value), stampOf(1), kept);
    await writer.append(take(0, 7 / 3, 1, 3), stampOf(2), kept);
    await writer.append(take(1, 7 / 3 + 1e-8, 1, 3), stampOf(2), kept);
    await writer.append(take(2, 7 / 3, 1, 4), stampOf(2), kept);
    await writer.close();
    expect((await verifyRecording(forged)).problems).toEqual([
      { line: 6, seq: 5, what: expect.stringContaining('its readings 1 to 3 give 2.33333333') },
      { line: 7, seq: 6, what: 'the take says that it averages 4 readings; numbers 1 to 4 hold 3' },
    ]);
  });
});

describe('any file', () => {
  it('gives a report that is bounded', async () => {
    expect((await verify(Buffer.alloc(0))).problems).toEqual([{ line: 1, what: 'the file is empty' }]);
    const noise = await verify(Buffer.from('noise\n'.repeat(5000)));
    expect(noise.problems).toHaveLength(100);
    expect(noise.more).toBe(4900);
    const endless = await verify(Buffer.concat([whole, Buffer.alloc(5 << 20, 'x')]));
    expect(endless.problems).toEqual([{ line: LINES + 1, what: 'is longer than 4 MiB' }]);
  });

  it('is read without a fault whatever is in it', async () => {
    await fc.assert(
      fc.asyncProperty(fc.uint8Array({ maxLength: 300 }), async (bytes) => {
        expect((await verify(bytes)).problems.length).toBeGreaterThan(0);
      }),
      { numRuns: 300 },
    );
  });
});
