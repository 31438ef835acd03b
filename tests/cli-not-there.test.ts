import { once } from 'node:events';
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { expectRefused, startProgram, statusOf, wayscribe } from './tools/program.ts';
import { PtyPair } from './tools/pty-pair.ts';
import { testFolder } from './tools/test-folder.ts';

test.each([
  [['replay', 'gone.jsonl'], 'gone.jsonl: there is no such file; name a recording'],
  [['verify', 'gone.jsonl'], 'gone.jsonl: there is no such file; name a recording'],
  [['reduce', 'gone.json'], 'gone.json: there is no such file; name a sheet or a recording'],
  [['profiles', 'check', 'gone.json'], 'gone.json: there is no such file; name the file of a profile'],
  [['lesson', 'check', 'gone.json'], 'gone.json: there is no such file; name the file of a lesson'],
  [['report', 'gone'], 'gone: there is no job; name the folder of a job'],
  [['job', 'show', 'gone'], 'gone: there is no job; name the folder of a job'],
  [['job', 'zip', 'gone'], 'gone: there is no job; name the folder of a job'],
  [['replay', 'web'], 'web: this is a folder; name a recording'],
  [['profiles', 'check', 'web'], 'web: this is a folder; name the file of a profile'],
])('%j says what is not there, and what to name', async (args, told) => {
  const outcome = await wayscribe(...args);
  expectRefused(outcome, told);
  expect(outcome.stderr).not.toMatch(/\bE[A-Z]{3,}\b/);
});

test.each(['gone.jsonl', 'gone.csv', 'gone.jpg'])('a job does not take in %s', async (file) => {
  const job = join(testFolder(), 'bed');
  await wayscribe('job', 'new', job, '--part', 'bed');
  expectRefused(await wayscribe('job', 'add', job, file), `${file}: there is no such file; name `);
  expect(readdirSync(job)).toEqual(['job.json']);
});

test('what is written to a folder that is not there is refused by that', async () => {
  const job = join(testFolder(), 'bed');
  await wayscribe('job', 'new', job, '--part', 'bed');
  const { stderr, status } = await wayscribe('job', 'zip', job, '--out', join(job, 'gone', 'bed.zip'));
  expect(stderr).toContain('bed.zip: its folder is not there; name a folder that is');
  expect(status).toBe(1);
});

test('a name of 300 letters is refused as a name, never by the disk', async () => {
  const folder = testFolder();
  const long = 'x'.repeat(300);
  expectRefused(
    await wayscribe('job', 'new', join(folder, 'bed'), '--part', long),
    'part: has more than 120 letters',
  );
  expect(existsSync(join(folder, 'bed'))).toBe(false);
  const { stderr, status } = await wayscribe('job', 'new', join(folder, long), '--part', 'bed');
  expect(stderr).toContain('the name is too long for a file; give it a shorter one');
  expect(status).toBe(1);
});

test('listening to a port that is not there ends, and promises no waiting', async () => {
  const { stdout, stderr, status } = await wayscribe('listen', '/dev/nowhere');
  expect(stderr).toBe(
    '/dev/nowhere: the port is not there; plug the cable in, or name one that `wayscribe ports` lists\n',
  );
  expect(stdout).toBe('');
  expect(status).toBe(1);
});

test('an instrument that is played says at once which port it waits for, and when it is there', async () => {
  const cable = new PtyPair(testFolder());
  const child = startProgram('simulate', 'line-decimal', '--to', cable.a);
  const ended = statusOf(child);
  onTestFinished(async () => {
    child.kill('SIGTERM');
    await ended;
    await cable.pullOut();
  });
  const [waits] = await once(child.stdout, 'data');
  expect(`${waits}`).toBe(
    `Waiting for ${cable.a}: the port is not there; plug the cable in; it is waited for. Ctrl-C ends it.\n`,
  );
  const next = once(child.stdout, 'data');
  await cable.plugIn();
  expect(`${(await next)[0]}`).toContain(`spoken to ${cable.a}`);
});
