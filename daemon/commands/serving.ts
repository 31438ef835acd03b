import { once } from 'node:events';
import type { startDaemon as Start } from '../daemon.ts';
import { lanAddresses, lanUrl, pairUrl } from '../server/lan.ts';
import type { Pairing } from '../server/pairing.ts';

/** Starts the daemon, says where the page is, and runs until it is told to end. */
export async function serveUntilStopped(
  options: Parameters<typeof Start>[0],
  ready: (url: string) => void,
): Promise<void> {
  // Loaded here, so that commands without a daemon need neither a server nor a serial port.
  const { startDaemon } = await import('../daemon.ts');
  const stopped = stopSignal();
  const daemon = await startDaemon(options);
  ready(daemon.url);
  if (daemon.pairing) await sayWhereInLan(daemon.port, daemon.pairing);
  for (const { message } of daemon.problems) console.error(`Left out: ${message}`);
  await stopped;
  await daemon.close();
}

/** Settles at the first request to stop. A second one ends the process as if nobody had listened. */
export async function stopSignal(): Promise<void> {
  const settled = new AbortController();
  const { signal } = settled;
  await Promise.race(['SIGINT', 'SIGTERM'].map((name) => once(process, name, { signal })));
  settled.abort();
}

/** Prints where devices in the network find the page, and what one of them opens to be paired. */
async function sayWhereInLan(port: number, pairing: Pairing): Promise<void> {
  const addresses = lanAddresses();
  if (addresses.length === 0) {
    console.log('This computer has no address in a network: nobody else can reach the page now.');
    return;
  }
  const { default: qr } = await import('qrcode');
  const { token } = pairing.invite();
  console.log('Devices in the network may watch at');
  for (const address of addresses) console.log(`  ${lanUrl(address, port)}`);
  console.log('To let one of them control, open this on it, within ten minutes and once:');
  for (const address of addresses) {
    const url = pairUrl(address, port, token);
    console.log(`  ${url}`);
    console.log(await qr.toString(url, { type: process.stdout.isTTY ? 'terminal' : 'utf8', small: true }));
  }
  console.log('Nothing is encrypted on the way: whoever can listen in on the network can read along.');
}
