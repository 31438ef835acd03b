import { z } from 'zod';

/** What the system knows of an adapter that is plugged in now. */
export const adapterSchema = z.object({
  path: z.string().describe('name of the port today'),
  vendor: z.string().describe('USB vendor, four hex digits'),
  product: z.string().describe('USB product, four hex digits'),
  serial: z.string().optional().describe('serial number of the adapter, when it has one'),
  outlet: z.string().describe('which of several ports of one adapter'),
  socket: z.string().describe('where it is plugged in'),
});
export type Adapter = z.infer<typeof adapterSchema>;

/**
 * How an instrument is found again, as one line of text: by kind and serial number of its adapter, or, where
 * adapters are alike, by kind and socket. A port that hangs on no adapter is its path.
 */
export type Identity = string;

const form = /^usb:([0-9a-f]{4}):([0-9a-f]{4}):(serial|socket):([^:]+)(?::([^:]*))?$/;

/** The identity of an adapter among all that are plugged in. */
export function identityOf(adapter: Adapter, all: readonly Adapter[]): Identity {
  const { vendor, product, serial, outlet, socket } = adapter;
  const kind = `usb:${vendor}:${product}`;
  const alone = serial !== undefined && all.filter((other) => isSame(other, adapter)).length === 1;
  return alone ? `${kind}:serial:${inText(serial)}:${inText(outlet)}` : `${kind}:socket:${inText(socket)}`;
}

/** Any name as a part of an identity. */
function inText(name: string): string {
  return encodeURIComponent(name);
}

function isSame(a: Adapter, b: Adapter): boolean {
  return a.vendor === b.vendor && a.product === b.product && a.serial === b.serial && a.outlet === b.outlet;
}

/** Whether a text is the identity of an adapter, and not the path of a port. */
export function isIdentity(text: string): boolean {
  return form.test(text);
}

/** Where an identity is today. `tie`: it is not where it was, and one of these may be it. */
export type Found =
  | { readonly is: 'found'; readonly path: string }
  | { readonly is: 'tie'; readonly paths: readonly string[] }
  | { readonly is: 'absent' };

/**
 * Looks an identity up among the adapters of now. By its serial number it is found in any socket; by its socket only
 * there, since one that is alike elsewhere may carry another instrument.
 */
export function whereIs(identity: Identity, all: readonly Adapter[]): Found {
  const match = form.exec(identity);
  if (!match) return { is: 'found', path: identity };
  const [, vendor, product, by, name, outlet] = match;
  const alike = all.filter((adapter) => adapter.vendor === vendor && adapter.product === product);
  const fit = alike.filter((adapter) =>
    by === 'serial'
      ? adapter.serial !== undefined && inText(adapter.serial) === name && inText(adapter.outlet) === outlet
      : inText(adapter.socket) === name,
  );
  if (fit.length === 1) return { is: 'found', path: fit[0]!.path };
  // One with a serial number of its own would have been bound by that.
  const maybe = by === 'serial' ? fit : alike.filter((one) => identityOf(one, all).includes(':socket:'));
  return maybe.length > 0 ? { is: 'tie', paths: maybe.map(({ path }) => path) } : { is: 'absent' };
}
