import { execFile } from 'node:child_process';
import { once } from 'node:events';
import { chmodSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { expect, onTestFinished, test } from 'vitest';
import { startDaemon } from '../daemon/daemon.ts';
import { checkClock, checkDisk, checkFolder, checkNode, checkPage } from '../daemon/doctor/here.ts';
import { checkPorts } from '../daemon/doctor/ports.ts';
import { checkBroker, checkReach } from '../daemon/doctor/reach.ts';
import { sampleHeader, writeSample } from './tools/sample-recording.ts';
import { testFolder } from './tools/test-folder.ts';

const run = promisify(execFile);

test('where all is well it says so, and ends with 0', async () => {
  const args = ['dist/wayscribe.js', 'doctor', '--folder', testFolder(), '--port', '0'];
  const { stdout } = await run(process.execPath, args).catch((error) => error);
  for (const what of ['Node', 'Folder', 'Disk', 'Clock', 'Page', 'Browser']) {
    expect(stdout).toMatch(new RegExp(`^good  ${what}: `, 'm'));
  }
  expect(stdout).toMatch(/^(good|mind|BAD ) {2}Ports?/m);
});

test('what will not work is marked, with what to do, and it ends with 1', async () => {
  const file = join(testFolder(), 'file');
  writeFileSync(file, '');
  const args = ['dist/wayscribe.js', 'doctor', '--folder', join(file, 'below'), '--port', '0'];
  const failed = await run(process.execPath, args).catch((error) => error);
  expect(failed.code).toBe(1);
  expect(failed.stdout).toMatch(/^BAD {3}Folder: .+ can't be written \(ENOTDIR\)\n {6}→ .+--folder$/m);
});

test('an old Node is told', () => {
  expect(checkNode('20.19.5')).toMatchObject({ is: 'bad', remedy: 'install Node 20.20 or later' });
  expect(checkNode('20.20.0').is).toBe('good');
  expect(checkNode('22.0.0').is).toBe('good');
});

test('a folder that a daemon has is told as held', async () => {
  const folder = testFolder();
  expect((await checkFolder(folder)).says).toBe(folder);
  const daemon = await startDaemon({ mode: 'serve', folder, port: 0 });
  expect((await checkFolder(folder)).says).toContain('a daemon has it');
  await daemon.close();
});

test('a clock that stands before a recording is wrong', async () => {
  const folder = testFolder();
  const at = Date.UTC(2026, 0, 2);
  expect((await checkClock(folder, at)).is).toBe('good');
  expect((await checkClock(folder, 0)).is).toBe('bad');
  await writeSample(join(folder, 'sample.jsonl'));
  expect((await checkClock(folder, sampleHeader.t + 1)).is).toBe('bad');
  expect(await checkClock(folder, at)).toMatchObject({ is: 'good' });
});

test('a disk that is not there, and a page that is not built', async () => {
  expect((await checkDisk('/no/such/folder')).is).toBe('mind');
  expect(checkPage(testFolder())).toMatchObject({ is: 'bad' });
});

test('a port that may not be opened, and none at all', async () => {
  const path = join(testFolder(), 'ttyUSB0');
  expect(await checkPorts(Promise.resolve([path]))).toMatchObject([
    { is: 'bad', remedy: expect.stringContaining('dialout') },
  ]);
  writeFileSync(path, '');
  chmodSync(path, 0o600);
  expect(await checkPorts(Promise.resolve([path]))).toMatchObject([{ is: 'good' }]);
  expect(await checkPorts(Promise.resolve([]))).toMatchObject([{ is: 'mind' }]);
});

test('who answers at the address of the page', async () => {
  const daemon = await startDaemon({ mode: 'serve', folder: testFolder(), port: 0 });
  expect(await checkReach(Number(new URL(daemon.url).port))).toMatchObject({
    is: 'good',
    says: expect.stringContaining('where Wayscribe runs'),
  });
  await daemon.close();
  const stranger = createServer((_request, response) => response.end('hello')).listen(0, '127.0.0.1');
  onTestFinished(() => void stranger.close());
  await once(stranger, 'listening');
  const { port } = stranger.address() as AddressInfo;
  expect(await checkReach(port)).toMatchObject({
    is: 'bad',
    says: expect.stringContaining('another program'),
  });
  expect(await checkBroker(`mqtt://127.0.0.1:${port}`)).toMatchObject([{ is: 'good' }]);
  expect(await checkBroker('mqtt://127.0.0.1:1')).toMatchObject([{ is: 'mind' }]);
  expect(await checkBroker(undefined)).toEqual([]);
});
