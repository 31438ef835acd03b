import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { testFolder } from '../../tests/tools/test-folder.ts';
import { readRecording } from './reader.ts';
import { verifyRecording } from './verify.ts';

const KILLS = 8;
const child = join(import.meta.dirname, '..', '..', 'tests', 'tools', 'writing-child.ts');

/** Lets a process write until it has told of `count` notes, kills it, and answers all that it told. */
async function writeAndKill(path: string, count: number): Promise<string[]> {
  const process_ = spawn(process.execPath, ['--import', 'tsx', child, path], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const told: string[] = [];
  for await (const line of createInterface({ input: process_.stdout })) {
    told.push(line);
    if (told.length === count) process_.kill('SIGKILL');
  }
  if (process_.exitCode === null && process_.signalCode === null) await once(process_, 'exit');
  expect(process_.signalCode).toBe('SIGKILL');
  return told;
}

it(`keeps all that was told, over ${KILLS} kills of the process that writes`, async () => {
  const path = join(testFolder(), 'a.jsonl');
  const [counts] = fc.sample(
    fc.array(fc.integer({ min: 1, max: 150 }), { minLength: KILLS, maxLength: KILLS }),
    1,
  );
  const told: string[] = [];
  for (const count of counts!) {
    told.push(...(await writeAndKill(path, count)));
    const { problems, closed } = await verifyRecording(path);
    const torn = !readFileSync(path, 'latin1').endsWith('\n');
    expect(problems.map(({ what }) => what)).toEqual(torn ? ['is torn: it has no line end'] : []);
    expect(closed).toBe(false);
    const { events } = await readRecording(path);
    const notes = new Set(
      events.flatMap((event) => (event.type === 'note' ? `${event.seq} ${event.text}` : [])),
    );
    expect(
      told.filter((line) => !notes.has(line)),
      `told and lost, kills after ${counts}`,
    ).toEqual([]);
    expect(events.map(({ seq }) => seq)).toEqual(events.map((_, k) => k + 1));
  }
  expect(told.length).toBeGreaterThanOrEqual(counts!.reduce((sum, count) => sum + count));
});
