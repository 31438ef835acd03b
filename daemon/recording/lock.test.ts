import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { testFolder } from '../../tests/tools/test-folder.ts';
import { lockFolder } from './lock.ts';

/** Another process that holds a folder until it is killed. */
async function holder(folder: string) {
  const code = `
    import { lockFolder } from ${JSON.stringify(join(import.meta.dirname, 'lock.ts'))};
    try { lockFolder(process.argv[1]); console.log('held'); setInterval(() => {}, 1000); }
    catch (error) { console.log(error.code); }`;
  const args = ['--import', 'tsx', '--input-type=module', '--eval', code, '--', folder];
  const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'inherit'] });
  onTestFinished(() => void child.kill('SIGKILL'));
  const [said] = await once(child.stdout, 'data');
  const kill = async () => {
    child.kill('SIGKILL');
    await once(child, 'exit');
  };
  return { said: String(said).trim(), pid: child.pid!, kill };
}

it('one folder is held once, and free again when it is given back', () => {
  const folder = testFolder();
  const release = lockFolder(folder);
  expect(() => lockFolder(folder)).toThrow(`process ${process.pid} is writing recordings there`);
  release();
  lockFolder(folder)();
  expect(readdirSync(folder)).toEqual([]);
});

it('a second process is refused and told who holds it', async () => {
  const folder = testFolder();
  const { said, pid } = await holder(folder);
  expect(said).toBe('held');
  expect(() => lockFolder(folder)).toThrow(`process ${pid} is writing recordings there`);
  expect(readdirSync(folder)).toHaveLength(1);
});

it('what a killed process left is taken over', async () => {
  const folder = testFolder();
  const { kill } = await holder(folder);
  await kill();
  const release = lockFolder(folder);
  expect(readdirSync(folder)).toEqual([expect.stringContaining(`-${process.pid}-`)]);
  release();
});

it('of several that start at once, at most one goes on', async () => {
  const folder = testFolder();
  const all = await Promise.all(Array.from({ length: 4 }, () => holder(folder)));
  const said = all.map(({ said }) => said);
  expect(said.filter((word) => word === 'held').length).toBeLessThanOrEqual(1);
  expect(said.filter((word) => word !== 'held' && word !== 'recording.locked')).toEqual([]);
});

it.runIf(process.platform === 'linux')('a process that got the same number later does not hold it', () => {
  const folder = testFolder();
  // Process 1 is alive, and started at another moment than the file says.
  writeFileSync(join(folder, '.lock-1-999999999999'), '');
  lockFolder(folder)();
  expect(readdirSync(folder)).toEqual([]);
});

it('a folder that cannot be written says so', () => {
  expect(() => lockFolder(join(testFolder(), 'nowhere'))).toThrow(
    expect.objectContaining({ code: 'recording.unwritable' }),
  );
});
