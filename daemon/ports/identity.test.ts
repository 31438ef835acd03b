import { mkdirSync, renameSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, test } from 'vitest';
import { isWayscribeError } from '../../shared/errors.ts';
import { type Adapter, identityOf, isIdentity, whereIs } from '../../shared/proving/identity.ts';
import { testFolder } from '../../tests/tools/test-folder.ts';
import { boundPort } from './identity.ts';
import { adaptersFromSystem, adaptersNow } from './identity-system.ts';
import { MadePort } from './made-port.ts';

/** A Linux system with adapters planted in its sockets. */
class PlantedSystem {
  readonly folders: { tty: string; dev: string; byPath: string };
  readonly #root = testFolder();

  constructor() {
    this.folders = {
      tty: join(this.#root, 'class/tty'),
      dev: join(this.#root, 'dev'),
      byPath: join(this.#root, 'dev/serial/by-path'),
    };
    for (const folder of Object.values(this.folders)) mkdirSync(folder, { recursive: true });
  }

  /** An adapter with a serial chip (`ttyUSB`) or a modem class port (`ttyACM`) in socket `1-1.N`. */
  plug(name: string, socket: string, { serial = '', product = '6001', named = true } = {}): void {
    const { tty, dev, byPath } = this.folders;
    const usb = join(this.#root, 'devices/usb1', socket);
    const chip = name.startsWith('ttyUSB');
    const device = join(usb, `${socket}:1.0`, ...(chip ? [name] : []));
    mkdirSync(device, { recursive: true });
    writeFileSync(join(usb, 'idVendor'), '0403\n');
    writeFileSync(join(usb, 'idProduct'), `${product}\n`);
    if (serial) writeFileSync(join(usb, 'serial'), `${serial}\n`);
    writeFileSync(join(usb, `${socket}:1.0`, 'bInterfaceNumber'), '00\n');
    if (chip) writeFileSync(join(device, 'port_number'), '0\n');
    mkdirSync(join(tty, name));
    symlinkSync(device, join(tty, name, 'device'));
    writeFileSync(join(dev, name), '');
    if (named) symlinkSync(join(dev, name), join(byPath, `pci-usb-${socket}:1.0-port0`));
  }

  pull(name: string, socket: string): void {
    const { tty, dev, byPath } = this.folders;
    rmSync(join(this.#root, 'devices/usb1', socket), { recursive: true });
    rmSync(join(tty, name), { recursive: true });
    rmSync(join(dev, name));
    rmSync(join(byPath, `pci-usb-${socket}:1.0-port0`), { force: true });
  }

  adapters = () => adaptersFromSystem(this.folders);

  path(name: string): string {
    return `${this.folders.dev}/${name}`;
  }

  async identity(name: string): Promise<string> {
    const all = await this.adapters();
    return identityOf(all.find(({ path }) => path === this.path(name))!, all);
  }

  /** The path at which the identity is opened now, or the code of the refusal. */
  async opened(identity: string): Promise<string> {
    let at = '';
    const portAt = (path: string) => {
      at = path;
      return new MadePort(path);
    };
    try {
      await boundPort(identity, this.adapters, portAt).open(
        { baudRate: 9600, dataBits: 8, parity: 'none', stopBits: 1 },
        { data: () => {}, closed: () => {} },
      );
      return at;
    } catch (error) {
      if (isWayscribeError(error)) return error.code;
      throw error;
    }
  }
}

test('adapters are found with kind, serial number, outlet and socket; other ports are none', async () => {
  const system = new PlantedSystem();
  system.plug('ttyUSB0', '1-1.2', { serial: 'A50:28/BI' });
  system.plug('ttyACM0', '1-1.4', { product: '7523', named: false });
  mkdirSync(join(system.folders.tty, 'ttyS0'));
  writeFileSync(system.path('ttyS0'), '');
  expect(await system.adapters()).toEqual([
    { path: system.path('ttyACM0'), vendor: '0403', product: '7523', outlet: '00', socket: '1-1.4.00' },
    {
      path: system.path('ttyUSB0'),
      vendor: '0403',
      product: '6001',
      serial: 'A50:28/BI',
      outlet: '00.0',
      socket: 'pci-usb-1-1.2:1.0-port0',
    },
  ]);
  for (const name of ['ttyUSB0', 'ttyACM0']) {
    const identity = await system.identity(name);
    expect(isIdentity(identity)).toBe(true);
    expect(identity).not.toContain(name);
    expect(await system.opened(identity)).toBe(system.path(name));
  }
});

describe('an instrument on an adapter with a serial number', () => {
  it('is found again under another name, in another socket', async () => {
    const system = new PlantedSystem();
    system.plug('ttyUSB0', '1-1.2', { serial: 'A1' });
    const identity = await system.identity('ttyUSB0');
    system.pull('ttyUSB0', '1-1.2');
    expect(await system.opened(identity)).toBe('port.absent');
    system.plug('ttyUSB0', '1-1.2', { serial: 'B2' });
    expect(await system.opened(identity)).toBe('port.absent');
    system.plug('ttyUSB3', '1-1.4', { serial: 'A1' });
    expect(await system.opened(identity)).toBe(system.path('ttyUSB3'));
  });

  it('is a tie when a second one of that number comes', async () => {
    const system = new PlantedSystem();
    system.plug('ttyUSB0', '1-1.2', { serial: '0001' });
    const identity = await system.identity('ttyUSB0');
    system.plug('ttyUSB1', '1-1.3', { serial: '0001' });
    expect(await system.opened(identity)).toBe('port.alike');
    // Bound while both are there, they are told apart by their sockets.
    for (const name of ['ttyUSB0', 'ttyUSB1']) {
      expect(await system.opened(await system.identity(name))).toBe(system.path(name));
    }
  });
});

describe('two alike without a serial number', () => {
  const twoAlike = () => {
    const system = new PlantedSystem();
    system.plug('ttyUSB0', '1-1.2');
    system.plug('ttyUSB1', '1-1.3');
    return system;
  };

  it('keep their sockets when their names are dealt out anew', async () => {
    const system = twoAlike();
    const [level, indicator] = [await system.identity('ttyUSB0'), await system.identity('ttyUSB1')];
    expect(level).not.toBe(indicator);
    system.pull('ttyUSB0', '1-1.2');
    system.pull('ttyUSB1', '1-1.3');
    system.plug('ttyUSB0', '1-1.3');
    system.plug('ttyUSB1', '1-1.2');
    expect(await system.opened(level)).toBe(system.path('ttyUSB1'));
    expect(await system.opened(indicator)).toBe(system.path('ttyUSB0'));
  });

  it('are never taken for each other when one is out', async () => {
    const system = twoAlike();
    const [level, indicator] = [await system.identity('ttyUSB0'), await system.identity('ttyUSB1')];
    system.pull('ttyUSB0', '1-1.2');
    expect(await system.opened(level)).toBe('port.alike');
    expect(await system.opened(indicator)).toBe(system.path('ttyUSB1'));
    system.pull('ttyUSB1', '1-1.3');
    expect(await system.opened(level)).toBe('port.absent');
  });

  it('in other sockets are a tie, until one is bound anew', async () => {
    const system = twoAlike();
    const level = await system.identity('ttyUSB0');
    system.pull('ttyUSB0', '1-1.2');
    system.plug('ttyUSB2', '1-1.9');
    expect(whereIs(level, await system.adapters())).toEqual({
      is: 'tie',
      paths: [system.path('ttyUSB1'), system.path('ttyUSB2')],
    });
    // "Move this one" showed it on ttyUSB2.
    expect(await system.opened(await system.identity('ttyUSB2'))).toBe(system.path('ttyUSB2'));
  });

  it('another kind in the socket is not it', async () => {
    const system = twoAlike();
    const level = await system.identity('ttyUSB0');
    system.pull('ttyUSB0', '1-1.2');
    system.pull('ttyUSB1', '1-1.3');
    system.plug('ttyUSB0', '1-1.2', { product: '7523' });
    expect(await system.opened(level)).toBe('port.absent');
  });
});

test('a port without an adapter is its path', async () => {
  const system = new PlantedSystem();
  expect(await system.opened('/dev/ttyS0')).toBe('/dev/ttyS0');
});

test('an adapter that goes while it is looked for breaks nothing', async () => {
  const system = new PlantedSystem();
  system.plug('ttyUSB0', '1-1.2');
  renameSync(system.folders.byPath, `${system.folders.byPath}-gone`);
  rmSync(join(system.folders.tty, 'ttyUSB0', 'device'));
  expect(await system.adapters()).toEqual([]);
});

test('whatever is asked of this machine is answered', async () => {
  for (const adapter of await adaptersNow()) expect(adapter satisfies Adapter).toBeTruthy();
});
