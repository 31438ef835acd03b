import type { PortList } from '../../../shared/api.ts';

/** A port by its identity, and what a person calls it. */
export interface ChosenPort {
  readonly port: string;
  readonly label: string;
}

type Port = PortList['ports'][number];

/** How a port is remembered: by its adapter, or by its path where it hangs on none. */
export function nameOf({ identity, path }: Port): string {
  return identity ?? path;
}

/** The ports on adapters like the one of that identity. */
export function portsLike(port: string | undefined, ports: readonly Port[]): ChosenPort[] {
  const kind = port?.split(':').slice(0, 3).join(':');
  return ports
    .filter(({ identity }) => identity?.startsWith(`${kind}:`))
    .map((one) => ({
      port: nameOf(one),
      label: one.label === one.path ? one.path : `${one.label}, ${one.path}`,
    }));
}
