import { type ChildProcess, execFile, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { readdir, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, beforeAll, expect, onTestFinished, test } from 'vitest';
import { version } from '../daemon/program.ts';

const run = promisify(execFile);
const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm';

/** What the package may weigh, bytes: it comes over the connection of a workshop. */
const mostBytes = 2e6;

let folder = '';
let packed = '';

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'wayscribe-package-'));
  // dist/ is built already, and other tests are using it: no script runs.
  const pack = ['pack', '--ignore-scripts', '--json', '--pack-destination', folder];
  const [{ filename }] = JSON.parse((await run(npm, pack)).stdout);
  packed = join(folder, filename);
  writeFileSync(join(folder, 'package.json'), '{ "private": true }');
  await run(npm, ['install', '--prefer-offline', '--no-audit', '--no-fund', packed], { cwd: folder });
}, 300_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test('the package is small, and holds what is run and what is read', async () => {
  expect((await stat(packed)).size).toBeLessThan(mostBytes);
  const inside = await readdir(join(folder, 'node_modules', 'wayscribe'));
  expect(inside.sort()).toEqual([
    'LICENSE',
    'README.md',
    'daemon',
    'dist',
    'package.json',
    'protocols',
    'recordings',
  ]);
});

test('installed into an empty folder it runs by its name', async () => {
  const { stdout } = await run('npx', ['--no-install', 'wayscribe', '--version'], { cwd: folder });
  expect(stdout.trim()).toBe(version);
});

test('it serves the demo with its page, and plays a recording that came along', async () => {
  const recording = join(folder, 'node_modules', 'wayscribe', 'recordings', 'front-way-as-found.jsonl');
  const { stdout } = await run('npx', ['--no-install', 'wayscribe', 'verify', recording], { cwd: folder });
  expect(stdout).toContain('Every line is as it was written');

  const url = await serving(['demo', '--no-open', '--port', '0', '--folder', join(folder, 'demo')]);
  const page = await (await fetch(url)).text();
  const files = [...page.matchAll(/(?:src|href)="\.\/([^"]+)"/g)].map(([, path]) => path!);
  expect(files.length).toBeGreaterThan(2);
  for (const path of files) expect((await fetch(new URL(path, url))).status, path).toBe(200);
});

/** Address of the page of the installed program. */
async function serving(args: readonly string[]): Promise<string> {
  const program = join(folder, 'node_modules', '.bin', 'wayscribe');
  const child: ChildProcess = spawn(program, args, { cwd: folder, stdio: ['ignore', 'pipe', 'inherit'] });
  onTestFinished(async () => {
    const gone = once(child, 'exit');
    child.kill('SIGTERM');
    await gone;
  });
  let said = '';
  for await (const bytes of child.stdout!) {
    said += bytes;
    const found = /http:\/\/\S+/.exec(said);
    if (found) return found[0];
  }
  throw new Error(`it ended: ${said}`);
}
