import { expect, test } from 'vitest';
import { DaemonProcess } from '../tools/daemon-process.ts';
import { testFolder } from '../tools/test-folder.ts';
import { documentLine, fuzzDocuments } from './document-run.ts';
import { documentKinds } from './documents.ts';
import { fuzzMessages, fuzzRequests, serverLine } from './server-run.ts';

const seed = 811;

test.each(documentKinds.map((kind) => [kind.name, kind] as const))(
  'damaged %s are read, or refused with their place, and nothing else happens',
  async (name, kind) => {
    const count = await fuzzDocuments(kind, 400, seed);
    console.log(`seed ${seed}: ${documentLine(name, count)}`);
    expect(count.faults).toEqual([]);
    expect(count.grownMiB).toBeLessThan(16);
  },
);

test('damaged messages and requests are answered with their place, and the daemon goes on', async () => {
  const daemon = await DaemonProcess.startMeasured('demo', '--folder', testFolder(), '--lan');
  try {
    for (const [name, fuzz] of [
      ['messages', fuzzMessages],
      ['requests', fuzzRequests],
    ] as const) {
      const count = await fuzz(daemon, 2000, seed);
      console.log(`seed ${seed}: ${serverLine(name, count)}`);
      expect(count.faults).toEqual([]);
      expect(count.grownMiB).toBeLessThan(16);
    }
    expect((await fetch(daemon.url)).status).toBe(200);
  } finally {
    await daemon.stop();
  }
});
