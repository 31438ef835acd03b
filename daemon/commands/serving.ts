import { once } from 'node:events';
import type { startDaemon as Start } from '../daemon.ts';

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
