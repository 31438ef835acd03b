import type { IncomingMessage } from 'node:http';
import type { Access } from '../../shared/messages.ts';
import { isFromHere } from './guard.ts';
import type { Pairing } from './pairing.ts';

/** What a request may do, and by the right of which paired device. */
export interface Right {
  readonly access: Access;
  readonly device: string | null;
}

/** Name of the cookie. Cookies don't tell ports apart, so that the name must. */
export function cookieName(port: number): string {
  return `wayscribe-${port}`;
}

/** Who asks: this computer, a device that was paired, or somebody who may watch. */
export function rightOf(
  request: Pick<IncomingMessage, 'headers' | 'socket'>,
  pairing: Pairing | null,
  port: number,
): Right {
  if (isFromHere(request.socket)) return { access: 'local', device: null };
  const secret = cookieIn(request.headers.cookie ?? '', cookieName(port));
  const device = secret === null ? null : (pairing?.find(secret) ?? null);
  return { access: device === null ? 'watching' : 'paired', device };
}

function cookieIn(header: string, name: string): string | null {
  for (const pair of header.split(';')) {
    const at = pair.indexOf('=');
    if (pair.slice(0, at).trim() === name) return pair.slice(at + 1).trim();
  }
  return null;
}
