import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { WayscribeError } from '../shared/errors.ts';
import { loadProfiles, profilesFolder } from './instruments/own-profiles.ts';
import { JobStore } from './job/job-store.ts';
import { boundPort } from './ports/identity.ts';
import { packageFolder, program } from './program.ts';
import { InstrumentStore } from './proving/instrument-store.ts';
import { lockFolder } from './recording/lock.ts';
import { RecordingStore } from './recording/store.ts';
import { apiRouter } from './server/api.ts';
import { servePages } from './server/sockets.ts';
import { webApp } from './server/web.ts';
import { Stage } from './session/stage.ts';

export interface DaemonOptions {
  /** `demo`: simulated instruments may be used. */
  readonly mode: 'serve' | 'demo';
  /** Folder of the recordings; made when it is not there. */
  readonly folder: string;
  /** Folder of the person's own profiles, which need not be there; "profiles" in `folder` when left out. */
  readonly profiles?: string;
  /** Port of the page on this computer; 0 takes a free one. */
  readonly port: number;
  /** Path of a recording to open at once. */
  readonly replay?: string;
}

export interface Daemon {
  /** Address of the page. */
  readonly url: string;
  /** What is wrong with profiles that were left out. */
  readonly problems: readonly WayscribeError[];
  close(): Promise<void>;
}

/**
 * Starts the daemon: takes the folder, goes on with a survey that was interrupted, listens on this computer only.
 * @throws WayscribeError `recording.locked` when another daemon has the folder, `port.busy` when the port is taken
 */
export async function startDaemon({ mode, folder, profiles, port, replay }: DaemonOptions): Promise<Daemon> {
  const { book, problems } = await loadProfiles(profilesFolder({ folder, profiles }));
  const store = await RecordingStore.open(folder);
  const unlock = lockFolder(folder);
  const demo = mode === 'demo';
  const jobs = new JobStore(folder);
  const instruments = new InstrumentStore(folder);
  const makePort = (port: string) => boundPort(port);
  const stage = new Stage({ store, program, demo, profiles: book, instruments, makePort });
  try {
    if (demo) await jobs.seed(join(packageFolder, 'recordings', 'rebuild'));
    if (replay === undefined) await stage.resumeInterrupted();
    else await stage.replay(replay);
    let listening = port;
    const app = webApp(
      apiRouter(store, jobs, book, instruments, demo),
      join(packageFolder, 'dist', 'web'),
      () => listening,
    );
    const server = createServer(app);
    const pages = servePages(server, stage, () => listening);
    await new Promise<void>((resolve, reject) => {
      server.once('error', (error: NodeJS.ErrnoException) => reject(listenError(error, port)));
      server.listen(port, '127.0.0.1', resolve);
    });
    listening = (server.address() as AddressInfo).port;
    return {
      url: `http://localhost:${listening}/`,
      problems,
      async close() {
        pages.close();
        server.close();
        server.closeAllConnections();
        await stage.close();
        unlock();
      },
    };
  } catch (error) {
    await stage.close();
    unlock();
    throw error;
  }
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
