import { createServer, type IncomingMessage, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { isWayscribeError, WayscribeError } from '../shared/errors.ts';
import { loadProfiles, profilesFolder } from './instruments/own-profiles.ts';
import { JobStore } from './job/job-store.ts';
import { boundPort } from './ports/identity.ts';
import { packageFolder, program } from './program.ts';
import { InstrumentStore } from './proving/instrument-store.ts';
import { type PublishSettings, startPublishing } from './publish/publishing.ts';
import { lockFolder } from './recording/lock.ts';
import { RecordingStore } from './recording/store.ts';
import { rightOf } from './server/access.ts';
import { apiRouter } from './server/api.ts';
import { limitConnections, serverLimits } from './server/connections.ts';
import { Pairing } from './server/pairing.ts';
import { pairingRouter } from './server/pairing-api.ts';
import { servePages } from './server/sockets.ts';
import { webApp } from './server/web.ts';
import { Stage } from './session/stage.ts';

export interface DaemonOptions {
  /** `demo`: simulated instruments may be used. */
  readonly mode: 'serve' | 'demo';
  /** How many times faster than usual the simulated instruments are moved and come to rest; 1 when left out. */
  readonly pace?: number;
  /** Folder of the recordings; made when it is not there. */
  readonly folder: string;
  /** Folder of the person's own profiles, which need not be there; "profiles" in `folder` when left out. */
  readonly profiles?: string | undefined;
  /** Port of the page on this computer; 0 takes a free one. */
  readonly port: number;
  /** Path of a recording that the page is to play. */
  readonly replay?: string;
  /** Lets devices in the network in: all may watch, those that were paired may control. */
  readonly lan?: boolean;
  /** Where takes and results are published to, if anywhere. */
  readonly publish?: PublishSettings | undefined;
}

export interface Daemon {
  /** Address of the page. */
  readonly url: string;
  /** What is left out because it is wrong: profiles, or publishing. */
  readonly problems: readonly WayscribeError[];
  /** Port on which it listens. */
  readonly port: number;
  /** Pairing of devices in the network; null when they are not let in. */
  readonly pairing: Pairing | null;
  close(): Promise<void>;
}

/**
 * Starts the daemon: takes the folder, goes on with a survey that was interrupted, listens: on this computer only,
 * unless the network is let in.
 * @throws WayscribeError `recording.locked` when another daemon has the folder, `port.busy` when the port is taken
 */
export async function startDaemon(options: DaemonOptions): Promise<Daemon> {
  const { mode, folder, profiles, port, replay, publish, lan = false, pace = 1 } = options;
  const { book, problems: leftOut } = await loadProfiles(profilesFolder({ folder, profiles }));
  const problems = [...leftOut];
  const store = await RecordingStore.open(folder);
  const lock = replay === undefined ? { unlock: lockFolder(folder), readOnly: false } : lockIfFree(folder);
  const { unlock, readOnly } = lock;
  const demo = mode === 'demo';
  const jobs = new JobStore(folder);
  const instruments = new InstrumentStore(folder);
  const makePort = (port: string) => boundPort(port);
  const stage = new Stage({ store, program, demo, pace, profiles: book, instruments, makePort, readOnly });
  try {
    if (demo) await jobs.seed(join(packageFolder, 'recordings', 'rebuild'));
    if (replay === undefined) await stage.resumeInterrupted();
    let listening = port;
    const own = () => listening;
    const pairing = lan ? await Pairing.open(folder) : null;
    const api = apiRouter(store, jobs, book, instruments, demo, replay);
    const revoked = (id: string) => pages.cutOff(id);
    const apis = pairing ? [pairingRouter(pairing, own, revoked), api] : [api];
    const mayControl = (request: IncomingMessage) =>
      rightOf(request, pairing, listening).access !== 'watching';
    const app = webApp(apis, join(packageFolder, 'dist', 'web'), own, mayControl);
    const server = createServer(serverLimits, app);
    limitConnections(server);
    const pages = servePages(server, stage, {
      port: own,
      lan,
      rightOf: (request) => rightOf(request, pairing, listening),
    });
    const host = lan ? '0.0.0.0' : '127.0.0.1';
    // Beside the daemon that writes, a recording is played on whatever port is free.
    await listen(server, port, host).catch((error) => {
      if (!readOnly || error.code !== 'EADDRINUSE') throw listenError(error, port);
      return listen(server, 0, host);
    });
    listening = (server.address() as AddressInfo).port;
    // A survey goes on whether or not it is published.
    const publishing =
      publish &&
      (await startPublishing(publish, store, stage).catch((error) => {
        if (!isWayscribeError(error)) throw error;
        problems.push(error);
      }));
    return {
      url: `http://localhost:${listening}/`,
      port: listening,
      pairing,
      problems,
      async close() {
        pages.close();
        server.close();
        server.closeAllConnections();
        await stage.close();
        await publishing?.close();
        unlock();
      },
    };
  } catch (error) {
    await stage.close();
    unlock();
    throw error;
  }
}

/** To play a recording the folder need not be one's own. */
function lockIfFree(folder: string): { unlock: () => void; readOnly: boolean } {
  try {
    return { unlock: lockFolder(folder), readOnly: false };
  } catch (error) {
    if (!isWayscribeError(error, 'recording.locked')) throw error;
    return { unlock: () => {}, readOnly: true };
  }
}

function listen(server: Server, port: number, host: string): Promise<void> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, host, resolve);
  });
}

function listenError(error: NodeJS.ErrnoException, port: number): Error {
  if (error.code !== 'EADDRINUSE') return error;
  return new WayscribeError(
    'port.busy',
    `port ${port}`,
    'another program listens there, perhaps another Wayscribe',
    'end it, or choose another one with --port',
  );
}
