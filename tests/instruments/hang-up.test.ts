import type { EventEmitter } from 'node:events';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { systemPorts } from '../../daemon/ports/hang-up.ts';
import { PtyPair } from '../tools/pty-pair.ts';

test('a port that is closed in the midst of a read is not waited for any more', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'wayscribe-'));
  const cable = new PtyPair(folder);
  await cable.plugIn();
  try {
    const port = await systemPorts.open({ path: cable.b, baudRate: 9600 });
    const { poller } = port as unknown as { poller: EventEmitter };
    const read = port.read(Buffer.alloc(16), 0, 16);
    const closing = port.close();
    // Whoever waits on a poller whose file is closed has the process end when the memory is collected.
    poller.once = () => expect.fail('the closed port was waited for');
    await expect(read).rejects.toMatchObject({ canceled: true });
    await closing;
  } finally {
    await cable.pullOut();
    await rm(folder, { recursive: true, force: true });
  }
});

test('a read begun after the other end hung up fails, and is not tried again for ever', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'wayscribe-'));
  const cable = new PtyPair(folder);
  await cable.plugIn();
  const port = await systemPorts.open({ path: cable.b, baudRate: 9600 });
  try {
    await cable.pullOut();
    await expect(port.read(Buffer.alloc(16), 0, 16)).rejects.toThrow(/hung up|EIO/);
  } finally {
    await port.close();
    await rm(folder, { recursive: true, force: true });
  }
});
