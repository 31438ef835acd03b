import { once } from 'node:events';
import { createServer } from 'node:http';
import { connect } from 'node:net';
import type { Finding } from './finding.ts';

const patienceMs = 3000;

/** Whether a browser of this computer reaches the page: at a daemon that runs, or at a stand-in for it. */
export async function checkReach(port: number): Promise<Finding> {
  const what = 'Browser';
  const url = `http://localhost:${port}/`;
  const server = createServer((_request, response) => response.end('<title>Wayscribe</title>'));
  try {
    const free = await new Promise<boolean>((resolve, reject) => {
      server.once('error', (error: NodeJS.ErrnoException) =>
        error.code === 'EADDRINUSE' ? resolve(false) : reject(error),
      );
      server.listen(port, '127.0.0.1', () => resolve(true));
    });
    const found = free ? (server.address() as { port: number }).port : port;
    const answer = await fetch(`http://localhost:${found}/`, { signal: AbortSignal.timeout(patienceMs) });
    const isOurs = (await answer.text()).includes('<title>Wayscribe</title>');
    if (isOurs) return { what, is: 'good', says: `reaches ${url}${free ? '' : ', where Wayscribe runs'}` };
    const remedy = 'end the other program, or choose another port with --port or in the settings';
    return { what, is: 'bad', says: `another program answers at ${url}`, remedy };
  } catch (error) {
    const cause = ((error as Error).cause ?? error) as NodeJS.ErrnoException;
    return {
      what,
      is: 'bad',
      says: `does not reach ${url} (${cause.code ?? cause.message})`,
      remedy:
        'look whether localhost leads to 127.0.0.1 and no firewall is in the way, or choose another port',
    };
  } finally {
    server.close();
  }
}

/** Whether the broker that is set can be reached. */
export async function checkBroker(address: string | undefined): Promise<Finding[]> {
  if (address === undefined) return [];
  const { hostname, host, port, protocol } = new URL(address);
  const standard = protocol === 'mqtts:' ? 8883 : 1883;
  const socket = connect({
    host: hostname.replace(/^\[|\]$/g, ''),
    port: Number(port) || standard,
    timeout: patienceMs,
  });
  try {
    await Promise.race([
      once(socket, 'connect'),
      once(socket, 'timeout').then(() => {
        throw new Error('no answer');
      }),
    ]);
    return [{ what: 'Broker', is: 'good', says: `${host} is there` }];
  } catch (error) {
    const why = (error as NodeJS.ErrnoException).code ?? (error as Error).message;
    const remedy =
      'what is taken waits in the recordings; look at the broker and at the address in the settings';
    return [{ what: 'Broker', is: 'mind', says: `${host} is away (${why})`, remedy }];
  } finally {
    socket.destroy();
  }
}
