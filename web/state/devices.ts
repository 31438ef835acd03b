import type { z } from 'zod';
import { type Invite, inviteSchema, type PairedDevice, pairedDevicesSchema } from '../../shared/api.ts';

async function ask<T>(method: string, path: string, schema: z.ZodType<T>): Promise<T | null> {
  try {
    const changes = method !== 'GET';
    const response = await fetch(`api/${path}`, {
      method,
      ...(changes && { headers: { 'Content-Type': 'application/json' }, body: '{}' }),
    });
    const parsed = schema.safeParse(response.ok ? await response.json() : null);
    return parsed.success ? parsed.data : null;
  } catch {
    return null;
  }
}

export const askDevices = (): Promise<PairedDevice[] | null> => ask('GET', 'devices', pairedDevicesSchema);
export const invite = (): Promise<Invite | null> => ask('POST', 'devices/invite', inviteSchema);
export const revoke = (id: string): Promise<PairedDevice[] | null> =>
  ask('DELETE', `devices/${encodeURIComponent(id)}`, pairedDevicesSchema);

/**
 * Pairs this device when it was opened by an address with a code; the code is taken out of the address, so that it is
 * neither kept nor passed on. True when that worked, false when the code was refused, null when there was none.
 */
export async function pairByAddress(): Promise<boolean | null> {
  const token = /^#pair=([\w-]+)$/.exec(location.hash)?.[1];
  if (!token) return null;
  history.replaceState(null, '', location.pathname);
  const body = JSON.stringify({ token });
  const headers = { 'Content-Type': 'application/json' };
  const answer = await fetch('api/pair', { method: 'POST', headers, body }).catch(() => null);
  return answer?.ok ?? false;
}
