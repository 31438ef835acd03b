import { spawnSync } from 'node:child_process';
import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { reading, sampleHeader, stampOf } from '../../tests/tools/sample-recording.ts';
import { testFolder } from '../../tests/tools/test-folder.ts';
import { readRecording } from './reader.ts';
import { verifyRecording } from './verify.ts';
import { RecordingWriter } from './writer.ts';

it('a disk that is really full refuses, loses nothing, and goes on when there is room', async (context) => {
  const disk = testFolder();
  const mount = spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=256k', 'tmpfs', disk]);
  if (mount.status !== 0) context.skip('a small disk can only be mounted by root on Linux');
  onTestFinished(() => void spawnSync('umount', ['-l', disk]));

  const ballast = join(disk, 'ballast');
  writeFileSync(ballast, Buffer.alloc(64 << 10));
  const path = join(disk, 'a.jsonl');
  const writer = await RecordingWriter.create(path, sampleHeader);
  const recorded: number[] = [];
  const fill = async () => {
    for (;;) {
      const batch = Array.from({ length: 7 }, (_, k) =>
        writer.append(reading(k), stampOf(k), { durable: k === 6 }),
      );
      const results = await Promise.allSettled(batch);
      for (const result of results) if (result.status === 'fulfilled') recorded.push(result.value.seq);
      const refused = results.find((result) => result.status === 'rejected');
      if (refused) return refused.reason;
    }
  };
  expect(await fill()).toMatchObject({ code: 'recording.full' });
  const whenFull = recorded.length;
  rmSync(ballast);
  expect(await fill()).toMatchObject({ code: 'recording.full' });
  expect(recorded.length).toBeGreaterThan(whenFull);
  await writer.close();

  expect((await verifyRecording(path)).problems).toEqual([]);
  expect((await readRecording(path)).events.map(({ seq }) => seq)).toEqual(recorded);
});
