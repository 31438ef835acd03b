import { networkInterfaces } from 'node:os';

/** Addresses under which other computers may reach this one (IPv4). */
export function lanAddresses(): string[] {
  return Object.values(networkInterfaces())
    .flatMap((addresses) => addresses ?? [])
    .filter(({ family, internal }) => family === 'IPv4' && !internal)
    .map(({ address }) => address);
}

/** Where the page is for a device in the network. */
export function lanUrl(address: string, port: number): string {
  return `http://${address}:${port}/`;
}

/** What a device opens to be paired. Behind the `#` it is in no log and no request, and nobody spends it by looking. */
export function pairUrl(address: string, port: number, token: string): string {
  return `${lanUrl(address, port)}#pair=${token}`;
}
