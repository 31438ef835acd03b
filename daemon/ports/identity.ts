import { existsSync } from 'node:fs';
import { WayscribeError } from '../../shared/errors.ts';
import { type Adapter, type Found, identityOf, isIdentity, whereIs } from '../../shared/proving/identity.ts';
import { adaptersNow } from './identity-system.ts';
import type { ListedPort } from './list.ts';
import type { PortMaker } from './port.ts';
import { realPort } from './real.ts';

/**
 * The port of an identity, looked up anew at every opening: an adapter that comes back under another name is found.
 * A text that is no identity of an adapter is the path of a port.
 */
export function boundPort(
  identity: string,
  adapters: () => Promise<readonly Adapter[]> = adaptersNow,
  portAt: (path: string) => PortMaker = realPort,
): PortMaker {
  if (!isIdentity(identity)) return portAt(identity);
  return {
    path: identity,
    async open(line, listener) {
      const found = whereIs(identity, await adapters());
      if (found.is === 'found') return portAt(found.path).open(line, listener);
      if (found.is === 'absent') {
        throw new WayscribeError(
          'port.absent',
          identity,
          'its adapter is not plugged in',
          'plug the cable in; it is waited for',
        );
      }
      throw new WayscribeError(
        'port.alike',
        found.paths.join(', '),
        'it is not in its socket, and an adapter like it is in another',
        'put it back into its socket, or get to know it again: move this one',
      );
    },
  };
}

/** The ports, each with the identity of its adapter where it hangs on one. */
export async function withIdentities(ports: readonly ListedPort[]): Promise<ListedPort[]> {
  const all = await adaptersNow();
  return ports.map((port) => {
    const adapter = all.find(({ path }) => path === port.path);
    if (!adapter) return port;
    const { vendor, product, serial } = adapter;
    const alike = all.filter(
      (one) => one.vendor === vendor && one.product === product && one.serial === serial,
    );
    return { ...port, identity: identityOf(adapter, all), alike: alike.length > 1 };
  });
}

/** Says of an identity whether its adapter is plugged in now. */
export async function whereNow(): Promise<(identity: string) => Found['is']> {
  const all = await adaptersNow();
  return (identity) => {
    if (isIdentity(identity)) return whereIs(identity, all).is;
    return existsSync(identity) ? 'found' : 'absent';
  };
}
