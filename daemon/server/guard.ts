import type { IncomingMessage } from 'node:http';

/**
 * Whether a request comes from this computer's own page: the exact name and port under which the daemon
 * listens, in `Host` and, where a browser sends it, in `Origin`. A page of elsewhere that reaches the port through a
 * name of its own, or through a form or a socket of its own, fails one of the two.
 */
export function isOwnRequest({ headers }: Pick<IncomingMessage, 'headers'>, port: number): boolean {
  const names = [`localhost:${port}`, `127.0.0.1:${port}`, `[::1]:${port}`];
  const { host, origin } = headers;
  if (host === undefined || !names.includes(host)) return false;
  return origin === undefined || origin === `http://${host}`;
}

/** Headers of every answer. Nothing is fetched from elsewhere, nothing runs that is not in a file of the page. */
export const securityHeaders: Record<string, string> = {
  'Content-Security-Policy':
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; " +
    "connect-src 'self'; manifest-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Referrer-Policy': 'no-referrer',
  'X-Content-Type-Options': 'nosniff',
};

/** A report brings its own style and type along, and nothing else; it runs nothing. */
export const reportPolicy =
  "default-src 'none'; style-src 'unsafe-inline'; font-src data:; img-src data:; base-uri 'none'; " +
  "form-action 'none'; frame-ancestors 'none'; sandbox allow-modals";
