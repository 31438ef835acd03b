import { execFile } from 'node:child_process';
import { existsSync } from 'node:fs';
import { promisify } from 'node:util';
import { expect, test } from 'vitest';

const run = promisify(execFile);
const wayscribe = `${process.execPath} dist/wayscribe.js`;
const hasShell = (name: string) =>
  ['/bin', '/usr/bin', '/usr/local/bin'].some((at) => existsSync(`${at}/${name}`));

/** What bash offers behind these words, the last of which is half typed. */
async function offered(...words: string[]): Promise<string[]> {
  const script = `source <(${wayscribe} completion bash)
    COMP_WORDS=(wayscribe "$@"); COMP_CWORD=$#; _wayscribe; printf '%s\\n' "\${COMPREPLY[@]}"`;
  const { stdout } = await run('bash', ['-c', script, 'bash', ...words]);
  return stdout.trimEnd().split('\n');
}

test.runIf(hasShell('bash'))('bash offers commands, those below them, and options', async () => {
  expect(await offered('s')).toEqual(
    expect.arrayContaining(['serve', 'settings', 'service', 'simulate', 'schema']),
  );
  expect(await offered('service', '')).toEqual(
    expect.arrayContaining(['install', 'remove', 'status', '--help']),
  );
  expect(await offered('serve', '--po')).toEqual(['--port']);
  expect(await offered('serve', '--port', '1', '--fol')).toEqual(['--folder']);
  expect(await offered('no-such-command', 'instal')).toEqual(['']);
});

test.runIf(hasShell('zsh'))('zsh understands what it is given', async () => {
  await run('zsh', ['-fc', `source <(echo 'compdef() {}'; ${wayscribe} completion zsh); whence _wayscribe`]);
});

test.runIf(hasShell('fish'))('fish offers the same', async () => {
  const { stdout } = await run('fish', [
    '-c',
    `${wayscribe} completion fish | source; complete -C 'wayscribe service '`,
  ]);
  expect(stdout).toMatch(/^install\t/m);
  expect(stdout).not.toMatch(/^serve\t/m);
});

test.each(['zsh', 'fish'])('%s is told every command', async (shell) => {
  const { stdout } = await run(process.execPath, ['dist/wayscribe.js', 'completion', shell]);
  for (const command of ['serve', 'demo', 'replay', 'job', 'doctor']) expect(stdout).toContain(command);
});
