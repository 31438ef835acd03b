import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { systemPorts } from '../../daemon/ports/hang-up.ts';
import { PtyPair } from '../tools/pty-pair.ts';

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
