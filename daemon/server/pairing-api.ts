import express, { type Request, type Response, Router } from 'express';
import qrcode from 'qrcode';
import { type Invite, pairSchema } from '../../shared/api.ts';
import type { Access } from '../../shared/messages.ts';
import { cookieName, rightOf } from './access.ts';
import { lanAddresses, pairUrl } from './lan.ts';
import type { Pairing } from './pairing.ts';

const cookieLastsMs = 400 * 24 * 3600_000;

/**
 * Pairing of devices in the network: this computer invites and revokes, a device shows its token. Everything that
 * changes something wants JSON and an `Origin`, which a page of elsewhere can't both give.
 *
 * @param revoked is told which device may no longer control
 */
export function pairingRouter(pairing: Pairing, port: () => number, revoked: (id: string) => void): Router {
  const api = Router();
  api.use(['/devices', '/pair'], (request, response, next) => {
    const changes = request.method !== 'GET' && request.method !== 'HEAD';
    if (!changes || (request.headers.origin !== undefined && request.is('application/json'))) return next();
    refuse(response, 403, 'request', 'is not from the page');
  });
  api.use('/devices', (request, response, next) => {
    if (accessOf(request) === 'local') next();
    else refuse(response, 403, 'devices', 'are seen to on the computer that Wayscribe runs on');
  });

  api.get('/devices', (_request, response) => {
    response.json(pairing.devices);
  });

  api.post('/devices/invite', async (_request, response) => {
    const { token, until } = pairing.invite();
    const invites = lanAddresses().map(async (address) => {
      const url = pairUrl(address, port(), token);
      return { url, qr: await qrcode.toString(url, { type: 'svg', margin: 2 }) };
    });
    response.json({ invites: await Promise.all(invites), until } satisfies Invite);
  });

  api.delete('/devices/:id', async (request, response) => {
    const { id } = request.params;
    const there = await pairing.revoke(id).finally(() => revoked(id));
    if (there) response.json(pairing.devices);
    else refuse(response, 404, 'device', 'is not paired');
  });

  api.post('/pair', express.json({ limit: '1kb' }), async (request, response) => {
    const asked = pairSchema.safeParse(request.body);
    const name = String(request.headers['user-agent'] ?? 'unnamed device');
    const secret = asked.success ? await pairing.redeem(asked.data.token, name) : null;
    if (secret === null) {
      return refuse(response, 403, 'pairing', 'this code was used before, or is too old');
    }
    // Not `secure`: there is no certificate for an address in a shop.
    response.cookie(cookieName(port()), secret, {
      httpOnly: true,
      sameSite: 'strict',
      path: '/',
      maxAge: cookieLastsMs,
    });
    response.json({});
  });

  function accessOf(request: Request): Access {
    return rightOf(request, pairing, port()).access;
  }
  return api;
}

function refuse(response: Response, status: number, place: string, message: string): void {
  response.status(status).json({ code: 'command.refused', place, message, remedy: '' });
}
