import { read as readWithCallback } from 'node:fs';
import { promisify } from 'node:util';
import { SerialPort } from 'serialport';

const readFile = promisify(readWithCallback);
const system = SerialPort.binding;
type SystemPort = Awaited<ReturnType<typeof system.open>>;
type PolledPort = Extract<SystemPort, { poller: unknown }>;

/**
 * The library's binding to this computer's ports, but for one thing: a read that returns no byte ends the port. A port
 * here always waits for at least one byte, so none at all means that its other end hung up (read(2), termios(3)). The
 * library tries again at once and for ever: when an adapter is pulled out in the very moment of a read, the port would
 * never be seen closed, and a processor would be kept busy with it. Nor is a port waited for that was closed while it
 * was read: its file is gone or belongs to somebody else, and the process would end with it.
 */
export const systemPorts: typeof system = {
  ...system,
  async open(options: Parameters<typeof system.open>[0]) {
    const port: SystemPort = await system.open(options as never);
    if ('poller' in port) {
      port.read = (buffer: Buffer, offset: number, length: number) => readOrEnd(port, buffer, offset, length);
    }
    return port;
  },
} as typeof system;

async function readOrEnd(port: PolledPort, buffer: Buffer, offset: number, length: number) {
  for (;;) {
    if (port.fd === null) throw closed();
    try {
      const { bytesRead } = await readFile(port.fd, buffer, offset, length, null);
      if (bytesRead === 0) throw new Error('the other end hung up');
      return { bytesRead, buffer };
    } catch (error) {
      const { code } = error as NodeJS.ErrnoException;
      if (code !== 'EAGAIN' && code !== 'EWOULDBLOCK' && code !== 'EINTR') throw error;
    }
    if (port.fd === null) throw closed();
    await readable(port);
  }
}

const closed = () => Object.assign(new Error('the port was closed'), { canceled: true });

/** Settles when the port has bytes, or fails when it has been closed or is at fault. */
function readable({ poller }: PolledPort): Promise<void> {
  return new Promise((resolve, reject) => {
    poller.once('readable', (error?: Error | null) => (error ? reject(error) : resolve()));
  });
}
