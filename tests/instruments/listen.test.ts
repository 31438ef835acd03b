import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { expect, test } from 'vitest';
import { realPort } from '../../daemon/ports/real.ts';
import { findProfile } from '../../protocols/shipped.ts';
import { PtyPair } from '../tools/pty-pair.ts';
import { testFolder } from '../tools/test-folder.ts';

/** `wayscribe listen` on one end of a cable, and what it wrote to the other. */
async function listening(
  args: readonly string[],
  frames: readonly string[],
  until: (heard: string, output: string) => boolean,
) {
  const pair = new PtyPair(testFolder());
  await pair.plugIn();
  let heard = '';
  let output = '';
  let wake = () => {};
  const port = await realPort(pair.a).open(findProfile('line-decimal').line, {
    data: (bytes) => {
      heard += bytes.toString('latin1');
      wake();
    },
    closed: () => {},
  });
  const command = ['--import', 'tsx', 'daemon/main.ts', 'listen', pair.b, '--folder', testFolder(), ...args];
  const listener = spawn(process.execPath, command, { stdio: ['ignore', 'pipe', 'inherit'] });
  listener.stdout.on('data', (text) => {
    output += text;
    wake();
  });
  const settled = async (holds: () => boolean) => {
    while (!holds()) await new Promise<void>((resolve) => (wake = resolve));
  };
  await settled(() => output.includes('Listening to'));
  for (const frame of frames) port.write(frame);
  await settled(() => until(heard, output));
  const ended = once(listener, 'close');
  listener.kill('SIGINT');
  expect(await ended).toEqual([0, null]);
  await port.close();
  await pair.pullOut();
  return { heard, output };
}

test('shows the bytes and who understands them, and writes nothing', async () => {
  const { heard, output } = await listening(
    [],
    ['+0012.4\r\n', '-0012.6\r\n', '+0012.8 mm\r\n'],
    (_, output) => output.includes('6d 6d'),
  );
  expect(heard).toBe('');
  expect(output).toContain('Listening to');
  expect(output).toMatch(/2b 30 30 31 32 2e 34/);
  expect(output).toContain('line-decimal: understood 1 frames, 2 pieces not; the last reads tilt -12.6');
});

test('asks only when told to, with the request of the profile', async () => {
  const { heard } = await listening(['--ask', 'ask-decimal'], ['\r\n'], (bytes) => bytes.includes('R\rR\r'));
  expect(heard).toMatch(/^(R\r)+$/);
});
