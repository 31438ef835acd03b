import { access, constants } from 'node:fs/promises';
import { userInfo } from 'node:os';
import { listPorts } from '../ports/list.ts';
import type { Finding } from './finding.ts';

/** Whether there are serial ports, and whether this person may open them. */
export async function checkPorts(
  ports = listPorts().then((found) => found.map(({ path }) => path)),
): Promise<Finding[]> {
  const paths = await ports;
  if (paths.length === 0) {
    const remedy =
      process.platform === 'linux'
        ? 'plug the adapter in; if it stays unseen, dmesg says what the kernel makes of it'
        : 'plug the adapter in; if it stays unseen, install the driver of its chip';
    return [{ what: 'Ports', is: 'mind', says: 'no serial port is found', remedy }];
  }
  return Promise.all(paths.map(checkPort));
}

async function checkPort(path: string): Promise<Finding> {
  const what = `Port ${path}`;
  // Elsewhere names of ports are no files.
  if (process.platform === 'win32') return { what, is: 'good', says: 'is there' };
  const denied = await access(path, constants.R_OK | constants.W_OK).then(
    () => null,
    (error: NodeJS.ErrnoException) => error.code ?? 'denied',
  );
  if (denied === null) return { what, is: 'good', says: 'may be opened' };
  return {
    what,
    is: 'bad',
    says: `you may not open it (${denied})`,
    remedy: `sudo usermod -aG dialout ${userInfo().username}, then log out and in again`,
  };
}
