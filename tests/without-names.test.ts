import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readRecording } from '../daemon/recording/reader.ts';
import { verifyRecording } from '../daemon/recording/verify.ts';
import { RecordingWriter } from '../daemon/recording/writer.ts';
import { withoutNames } from '../shared/lesson/without-names.ts';
import { fold } from '../shared/session/fold.ts';
import { resultOf } from '../shared/session/result.ts';
import { sealed } from '../web/state/seal.ts';
import { testFolder } from './tools/test-folder.ts';

test('a copy without names verifies, comes to the same, and names nobody', async () => {
  const folder = await testFolder();
  const { header, events } = await readRecording('recordings/lessons/clean-walk.jsonl');
  const named = join(folder, 'named.jsonl');
  const writer = await RecordingWriter.create(named, {
    ...header,
    setup: { ...header.setup, operator: 'Somebody' },
  });
  for (const { seq: _, t, m, ...event } of events) await writer.append(event, { t, m }, { durable: false });
  await writer.append(
    { type: 'conditions', operator: 'Somebody else', airC: 21 },
    { t: 1e13, m: 1e9 },
    { durable: false },
  );
  await writer.close();

  const text = await sealed(withoutNames(await readFile(named, 'utf8')));
  const copy = join(folder, 'copy.jsonl');
  await (await import('node:fs/promises')).writeFile(copy, text);
  expect((await verifyRecording(copy)).problems).toEqual([]);
  expect(text).not.toContain('Somebody');
  const read = await readRecording(copy);
  const session = fold(read.header, read.events);
  expect(session.setup.airC).toBe(21);
  expect(resultOf(session)).toEqual(resultOf(fold(header, events)));
});
