import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, vi } from 'vitest';
import { isWayscribeError } from '../../shared/errors.ts';
import { reading, sampleHeader, stampOf, take, writeSample } from '../../tests/tools/sample-recording.ts';
import { testFolder } from '../../tests/tools/test-folder.ts';
import { type OpenFile, openFile, type RecordingFile } from './file.ts';
import { readRecording } from './reader.ts';
import { verifyRecording } from './verify.ts';
import { RecordingWriter } from './writer.ts';

const stream = { durable: false };
const kept = { durable: true };

/** A real file whose operations can be made to fail, and are written down. */
function faulty() {
  const calls: string[] = [];
  const fail = new Map<keyof RecordingFile, string>();
  const open: OpenFile = async (path, how) => {
    const file = await openFile(path, how);
    const trip = async (call: keyof RecordingFile, before: () => Promise<unknown> = async () => {}) => {
      calls.push(call);
      const code = fail.get(call);
      if (code === undefined) return;
      await before();
      throw Object.assign(new Error(code), { code });
    };
    return {
      async write(bytes, position) {
        // What a full disk does: a part of it is there.
        await trip('write', () => file.write(bytes.subarray(0, bytes.length / 2), position));
        await file.write(bytes, position);
      },
      async truncate(size) {
        await trip('truncate');
        await file.truncate(size);
      },
      async sync() {
        await trip('sync');
        await file.sync();
      },
      close: () => file.close(),
    };
  };
  return { calls, fail, open };
}

async function codeOf(promise: Promise<unknown>): Promise<string> {
  const error = await promise.then(
    () => null,
    (reason: unknown) => reason,
  );
  return isWayscribeError(error) ? error.code : `${error}`;
}

async function expectSound(path: string, numbers: number[]): Promise<void> {
  expect((await verifyRecording(path)).problems).toEqual([]);
  expect((await readRecording(path)).events.map(({ seq }) => seq)).toEqual(numbers);
}

describe('a recording', () => {
  it('is read as it was written', async () => {
    const path = join(testFolder(), 'a.jsonl');
    const writer = await RecordingWriter.create(path, sampleHeader);
    const written = await Promise.all([
      writer.append(reading(1.5), stampOf(1), stream),
      writer.append(take(0, 1.5, 1, 1), stampOf(2), kept),
      writer.append({ type: 'note', text: 'Öl \u2028 "x" \u0000 \ud83d\udd27' }, stampOf(3), kept),
    ]);
    await writer.close();
    expect(written.map(({ seq }) => seq)).toEqual([1, 2, 3]);
    expect(await readRecording(path)).toEqual({ header: sampleHeader, events: written });
  });

  it('ends each line with a link that others can compute', async () => {
    const path = join(testFolder(), 'a.jsonl');
    await writeSample(path);
    const { createHash } = await import('node:crypto');
    let before = '';
    for (const line of readFileSync(path, 'utf8').trimEnd().split('\n')) {
      const at = line.lastIndexOf(',"h":');
      const hash = createHash('sha256')
        .update(before + line.slice(0, at))
        .digest('hex');
      before = hash.slice(0, 32);
      expect(JSON.parse(line).h).toBe(before);
      expect(line.slice(at)).toBe(`,"h":"${before}"}`);
    }
  });

  it('is not begun over another one', async () => {
    const path = join(testFolder(), 'a.jsonl');
    await writeSample(path);
    const before = readFileSync(path);
    expect(await codeOf(RecordingWriter.create(path, sampleHeader))).toBe('recording.unwritable');
    expect(readFileSync(path)).toEqual(before);
  });

  it('keeps what no reader would take out of the file', async () => {
    const path = join(testFolder(), 'a.jsonl');
    const writer = await RecordingWriter.create(path, sampleHeader);
    expect(await codeOf(writer.append(reading(Number.NaN), stampOf(1), stream))).toBe('recording.invalid');
    await writer.append(reading(1), stampOf(2), stream);
    await writer.close();
    await expectSound(path, [1]);
    expect(await codeOf(writer.append(reading(1), stampOf(3), stream))).toBe('recording.unwritable');
  });
});

describe('what waits', () => {
  it('is written at once and synced once, and comes back in order', async () => {
    const { calls, open } = faulty();
    const path = join(testFolder(), 'a.jsonl');
    const writer = await RecordingWriter.create(path, sampleHeader, open);
    calls.length = 0;
    const order: number[] = [];
    await Promise.all(
      Array.from({ length: 100 }, async (_, k) => {
        // The first one starts a write of its own, during which the others gather.
        const event = await writer.append(reading(k), stampOf(k), { durable: k > 50 });
        order.push(event.seq);
      }),
    );
    expect(calls).toEqual(['write', 'write', 'sync']);
    expect(order).toEqual(Array.from({ length: 100 }, (_, k) => k + 1));
    await writer.close();
    await expectSound(path, order);
  });

  it('is not lost when it is given in answer to the last one', async () => {
    const path = join(testFolder(), 'a.jsonl');
    const writer = await RecordingWriter.create(path, sampleHeader);
    for (let k = 0; k < 50; k += 1) await writer.append(reading(k), stampOf(k), { durable: k % 7 === 0 });
    const closing = writer.append(reading(50), stampOf(50), stream);
    await writer.close();
    expect((await closing).seq).toBe(51);
    await expectSound(
      path,
      Array.from({ length: 51 }, (_, k) => k + 1),
    );
  });

  it('is synced within a second when it is only the stream', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    try {
      const { calls, open } = faulty();
      const writer = await RecordingWriter.create(join(testFolder(), 'a.jsonl'), sampleHeader, open);
      calls.length = 0;
      await writer.append(reading(1), stampOf(1), stream);
      await writer.append(reading(2), stampOf(2), stream);
      expect(calls).toEqual(['write', 'write']);
      vi.advanceTimersByTime(1000);
      expect(calls).toEqual(['write', 'write', 'sync']);
      await writer.close();
    } finally {
      vi.useRealTimers();
    }
  });
});

describe('when the disk refuses', () => {
  it.each([
    ['write', 'ENOSPC', 'recording.full'],
    ['write', 'EDQUOT', 'recording.full'],
    ['write', 'EACCES', 'recording.unwritable'],
    ['write', 'EIO', 'recording.unwritable'],
    ['sync', 'EIO', 'recording.unwritable'],
    ['sync', 'ENOSPC', 'recording.full'],
  ] as const)(
    'to %s (%s), nothing is told as taken that is not, and it goes on after',
    async (call, code, told) => {
      const { fail, open } = faulty();
      const path = join(testFolder(), 'a.jsonl');
      const writer = await RecordingWriter.create(path, sampleHeader, open);
      await writer.append({ type: 'note', text: 'begun' }, stampOf(1), kept);
      const before = readFileSync(path);

      fail.set(call, code);
      const refused = [reading(1), take(1, 1, 2, 2), reading(2)].map((event) => {
        return codeOf(
          writer.append(event, stampOf(2), { durable: event.type === 'take' || call === 'sync' }),
        );
      });
      expect(await Promise.all(refused)).toEqual([told, told, told]);
      expect(readFileSync(path)).toEqual(before);

      fail.clear();
      expect((await writer.append({ type: 'note', text: 'room again' }, stampOf(3), kept)).seq).toBe(2);
      await writer.close();
      await expectSound(path, [1, 2]);
    },
  );

  it('to cut back as well, the next append does it first', async () => {
    const { fail, open } = faulty();
    const path = join(testFolder(), 'a.jsonl');
    const writer = await RecordingWriter.create(path, sampleHeader, open);
    fail.set('write', 'ENOSPC').set('truncate', 'EIO');
    const long = { type: 'note', text: 'x'.repeat(2000) } as const;
    expect(await codeOf(writer.append(long, stampOf(1), kept))).toBe('recording.full');
    fail.delete('write');
    expect(await codeOf(writer.append(reading(1), stampOf(2), kept))).toBe('recording.unwritable');
    fail.clear();
    await writer.append(reading(1), stampOf(3), kept);
    await writer.close();
    await expectSound(path, [1]);
  });

  it('to sync the stream, the next take is refused once and says so', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    try {
      const { fail, open } = faulty();
      const path = join(testFolder(), 'a.jsonl');
      const writer = await RecordingWriter.create(path, sampleHeader, open);
      await writer.append(reading(1), stampOf(1), stream);
      fail.set('sync', 'EIO');
      await vi.advanceTimersByTimeAsync(1000);
      fail.clear();
      expect(await codeOf(writer.append(take(0, 1, 1, 1), stampOf(2), kept))).toBe('recording.unwritable');
      await writer.append(take(0, 1, 1, 1), stampOf(3), kept);
      await writer.close();
      await expectSound(path, [1, 2]);
    } finally {
      vi.useRealTimers();
    }
  });

  it('from the start, there is no recording', async () => {
    const { fail, open } = faulty();
    fail.set('write', 'ENOSPC');
    const path = join(testFolder(), 'a.jsonl');
    expect(await codeOf(RecordingWriter.create(path, sampleHeader, open))).toBe('recording.full');
    expect(existsSync(path)).toBe(false);
  });
});
