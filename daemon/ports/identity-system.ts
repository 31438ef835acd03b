import { readdir, readFile, realpath } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { SerialPort } from 'serialport';
import type { Adapter } from '../../shared/proving/identity.ts';

/** The folders of a Linux system in which adapters are told; a test names others. */
export interface AdapterFolders {
  readonly tty: string;
  readonly dev: string;
  readonly byPath: string;
}

const systemFolders: AdapterFolders = {
  tty: '/sys/class/tty',
  dev: '/dev',
  byPath: '/dev/serial/by-path',
};

/** The USB adapters of this computer. Never fails: where nothing can be asked, none is found. */
export async function adaptersNow(): Promise<Adapter[]> {
  return process.platform === 'linux' ? adaptersFromSystem() : adaptersFromLibrary();
}

/** The adapters of a Linux system as the kernel shows them. */
export async function adaptersFromSystem(folders: AdapterFolders = systemFolders): Promise<Adapter[]> {
  const { tty, dev, byPath } = folders;
  const sockets = await socketNames(byPath);
  const present = new Set(await namesIn(dev));
  const found = await Promise.all(
    (await namesIn(tty)).filter((name) => present.has(name)).map((name) => adapterOf(name, folders, sockets)),
  );
  return found.filter((adapter) => adapter !== null).sort((a, b) => (a.path < b.path ? -1 : 1));
}

async function adapterOf(
  name: string,
  { tty, dev }: AdapterFolders,
  sockets: ReadonlyMap<string, string>,
): Promise<Adapter | null> {
  const device = await realpath(join(tty, name, 'device')).catch(() => null);
  if (!device) return null;
  // From the port up to the USB device that carries it, past the interface that tells its ports apart.
  let outlet = (await textOf(join(device, 'port_number'))) ?? '';
  for (let folder = device; folder !== dirname(folder); folder = dirname(folder)) {
    const inner = await textOf(join(folder, 'bInterfaceNumber'));
    if (inner !== null) outlet = outlet ? `${inner}.${outlet}` : inner;
    const vendor = await textOf(join(folder, 'idVendor'));
    const product = await textOf(join(folder, 'idProduct'));
    if (vendor === null || product === null) continue;
    const serial = await textOf(join(folder, 'serial'));
    const path = `${dev}/${name}`;
    const socket = sockets.get(await realpath(path).catch(() => path)) ?? `${basename(folder)}.${outlet}`;
    return { path, vendor, product, ...(serial && { serial }), outlet, socket };
  }
  return null;
}

/** The sockets by the ports that hang on them, as the system names them. */
async function socketNames(byPath: string): Promise<Map<string, string>> {
  const names = new Map<string, string>();
  for (const name of (await namesIn(byPath)).sort()) {
    const path = await realpath(join(byPath, name)).catch(() => null);
    // Newer systems give two names to a socket; the first in order is kept.
    if (path && !names.has(path)) names.set(path, name);
  }
  return names;
}

async function adaptersFromLibrary(): Promise<Adapter[]> {
  const ports = await SerialPort.list().catch(() => []);
  return ports.flatMap(({ path, vendorId, productId, serialNumber, locationId }): Adapter[] => {
    if (!vendorId || !productId) return [];
    const serial = serialNumber ? { serial: serialNumber } : {};
    const [vendor, product] = [vendorId.toLowerCase(), productId.toLowerCase()];
    return [{ path, vendor, product, ...serial, outlet: '', socket: locationId ?? path }];
  });
}

async function textOf(path: string): Promise<string | null> {
  return readFile(path, 'utf8').then(
    (text) => text.trim(),
    () => null,
  );
}

async function namesIn(folder: string): Promise<string[]> {
  return readdir(folder).catch(() => []);
}
