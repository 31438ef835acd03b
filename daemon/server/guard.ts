import type { IncomingMessage } from 'node:http';

const ownAddresses = ['127.0.0.1', '::1'];

/**
 * Whether a request comes to this daemon under its own exact name and port, in `Host` and, where a browser sends it,
 * in `Origin`: on this computer its local names, from the network the very address at which it arrived. A page of
 * elsewhere that reaches the port through a name of its own, or through a form or a socket of its own, fails one of
 * the two.
 */
export function isOwnRequest(
  { headers, socket }: Pick<IncomingMessage, 'headers' | 'socket'>,
  port: number,
): boolean {
  const names = isFromHere(socket)
    ? [`localhost:${port}`, `127.0.0.1:${port}`, `[::1]:${port}`]
    : [`${socket.localAddress}:${port}`];
  const { host, origin } = headers;
  if (host === undefined || !names.includes(host)) return false;
  return origin === undefined || origin === `http://${host}`;
}

/** Whether the other end of a connection is this computer, called by one of its local names. */
export function isFromHere({
  remoteAddress,
  localAddress,
}: Pick<IncomingMessage['socket'], 'remoteAddress' | 'localAddress'>): boolean {
  return [remoteAddress, localAddress].every((address) => ownAddresses.includes(address ?? ''));
}

/** Headers of every answer. Nothing is fetched from elsewhere, nothing runs that is not in a file of the page. */
export const securityHeaders: Record<string, string> = {
  'Content-Security-Policy':
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; " +
    "connect-src 'self'; manifest-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Permissions-Policy': 'camera=(), geolocation=(), microphone=(), serial=(), usb=()',
  'Referrer-Policy': 'no-referrer',
  'X-Content-Type-Options': 'nosniff',
  'X-Frame-Options': 'DENY',
};

/** A report brings its own style and type along, and nothing else; it runs nothing. */
export const reportPolicy =
  "default-src 'none'; style-src 'unsafe-inline'; font-src data:; img-src data:; base-uri 'none'; " +
  "form-action 'none'; frame-ancestors 'none'; sandbox allow-modals";
