import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { testFolder } from '../../tests/tools/test-folder.ts';
import { listFromSystem, listPorts } from './list.ts';

it('never fails, whatever this machine lacks', async () => {
  for (const { path, label } of await listPorts()) expect(path && label).not.toBe('');
});

it('finds ports as the kernel shows them, by the names of their adapters', async () => {
  const root = testFolder();
  const folders = { byId: join(root, 'by-id'), tty: join(root, 'tty'), dev: join(root, 'dev') };
  for (const folder of Object.values(folders)) mkdirSync(folder);
  for (const name of ['ttyS0', 'ttyS1', 'ttyUSB0', 'ttyACM0', 'tty1', 'null']) {
    writeFileSync(join(folders.dev, name), '');
  }
  const types = { ttyS0: '4\n', ttyS1: '0\n', ttyUSB0: null, ttyACM0: null, ttyUSB7: null, tty1: null };
  for (const [name, type] of Object.entries(types)) {
    mkdirSync(join(folders.tty, name));
    if (type) writeFileSync(join(folders.tty, name, 'type'), type);
  }
  symlinkSync('../dev/ttyUSB0', join(folders.byId, 'usb-Some_Adapter_0042-if00-port0'));
  symlinkSync('../dev/gone', join(folders.byId, 'usb-Gone_1-if00'));
  // ttyS1 is a name without a chip, ttyUSB7 is not in this /dev, tty1 is a console.
  expect(await listFromSystem(folders)).toEqual([
    { path: join(folders.dev, 'ttyACM0'), label: join(folders.dev, 'ttyACM0') },
    { path: join(folders.dev, 'ttyS0'), label: join(folders.dev, 'ttyS0') },
    { path: join(folders.dev, 'ttyUSB0'), label: 'Some Adapter 0042' },
  ]);
});

it('finds nothing where there is nothing to ask', async () => {
  const nowhere = join(testFolder(), 'nowhere');
  expect(await listFromSystem({ byId: nowhere, tty: nowhere, dev: nowhere })).toEqual([]);
});
