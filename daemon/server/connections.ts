import type { Server, ServerOptions } from 'node:http';
import { isFromHere } from './guard.ts';

const mostConnections = 512;
/** Of one address in the network, so that no one of them takes all. */
const mostOfOneAddress = 48;

/** How long and how large a request may be. */
export const serverLimits: ServerOptions = {
  headersTimeout: 10_000,
  requestTimeout: 20_000,
  keepAliveTimeout: 5_000,
  connectionsCheckingInterval: 2_000,
  maxHeaderSize: 8 * 1024,
};

/** Bounds the connections of a server, in all and of each address in the network. */
export function limitConnections(server: Server): void {
  server.maxConnections = mostConnections;
  const open = new Map<string, number>();
  server.on('connection', (socket) => {
    if (isFromHere(socket)) return;
    const address = socket.remoteAddress ?? '';
    const count = (open.get(address) ?? 0) + 1;
    open.set(address, count);
    socket.once('close', () => {
      const left = (open.get(address) ?? 1) - 1;
      if (left === 0) open.delete(address);
      else open.set(address, left);
    });
    if (count > mostOfOneAddress) socket.destroy();
  });
}
