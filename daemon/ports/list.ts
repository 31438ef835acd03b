import { readdir, readFile, realpath } from 'node:fs/promises';
import { SerialPort } from 'serialport';
import type { PortList } from '../../shared/api.ts';

export type ListedPort = PortList['ports'][number];

/** The folders of a Linux system in which ports are found; a test names others. */
export interface SystemFolders {
  readonly byId: string;
  readonly tty: string;
  readonly dev: string;
}

const systemFolders: SystemFolders = { byId: '/dev/serial/by-id', tty: '/sys/class/tty', dev: '/dev' };

/** The serial ports of this computer. Never fails: where nothing can be asked, nothing is found. */
export async function listPorts(): Promise<ListedPort[]> {
  try {
    const found = await SerialPort.list();
    const ports = found.map(({ path, manufacturer, pnpId, serialNumber, ...rest }) => {
      const name = (rest as { friendlyName?: string }).friendlyName ?? manufacturer ?? pnpId;
      return listed(path, name, serialNumber);
    });
    return process.platform === 'linux' ? await withHardware(ports, systemFolders) : ports;
  } catch {
    // The library asks udevadm, which small Linux systems lack.
    return listFromSystem();
  }
}

/** The ports of a Linux system as the kernel shows them, named by their adapters where these are known. */
export async function listFromSystem(folders: SystemFolders = systemFolders): Promise<ListedPort[]> {
  const labels = new Map<string, string>();
  for (const name of await namesIn(folders.byId)) {
    const path = await realpath(`${folders.byId}/${name}`).catch(() => null);
    if (path) labels.set(path, readable(name));
  }
  const present = new Set(await namesIn(folders.dev));
  const kernel = (await namesIn(folders.tty))
    .filter((name) => /^(tty(S|USB|ACM|AMA|MFD|O|XRUSB)|rfcomm)\d+$/.test(name) && present.has(name))
    .map((name) => `${folders.dev}/${name}`);
  const paths = [...new Set([...labels.keys(), ...kernel])].sort();
  return withHardware(
    paths.map((path) => listed(path, labels.get(path), undefined)),
    folders,
  );
}

/** Leaves out the built-in ports that the kernel keeps a name for although nothing is there. */
async function withHardware(ports: ListedPort[], { tty, dev }: SystemFolders): Promise<ListedPort[]> {
  const there = await Promise.all(
    ports.map(async ({ path }) => {
      const name = path.slice(dev.length + 1);
      if (!/^ttyS\d+$/.test(name)) return true;
      // serial_core.h: type 0 is PORT_UNKNOWN, no chip found.
      const type = await readFile(`${tty}/${name}/type`, 'latin1').catch(() => '0');
      return type.trim() !== '0';
    }),
  );
  return ports.filter((_, k) => there[k]);
}

function listed(path: string, name: string | undefined, serial: string | undefined): ListedPort {
  return { path, label: name || path, ...(serial && { serial }) };
}

/** `usb-Maker_Product_0001-if00-port0` as "Maker Product 0001". */
function readable(name: string): string {
  return name
    .replace(/^usb-/, '')
    .replace(/-if\d+(-port\d+)?$/, '')
    .replaceAll('_', ' ');
}

async function namesIn(folder: string): Promise<string[]> {
  return readdir(folder).catch(() => []);
}
