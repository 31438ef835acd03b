import { createReadStream } from 'node:fs';
import { type NextFunction, type Request, type Response, Router } from 'express';
import type { ProfileBook } from '../../protocols/book.ts';
import type { Profile } from '../../protocols/profile.ts';
import type { InstrumentList, PortList, RecordingList } from '../../shared/api.ts';
import { isWayscribeError } from '../../shared/errors.ts';
import { current } from '../../shared/proving/instruments.ts';
import { fold, type Session } from '../../shared/session/fold.ts';
import { resultOf } from '../../shared/session/result.ts';
import { toCsv } from '../../shared/session/to-csv.ts';
import { toSheet } from '../../shared/session/to-sheet.ts';
import { references } from '../../shared/sheet/sheet.ts';
import type { HeightUnit, TiltUnit } from '../../shared/units.ts';
import type { JobStore } from '../job/job-store.ts';
import { whereNow, withIdentities } from '../ports/identity.ts';
import { listPorts } from '../ports/list.ts';
import type { InstrumentStore } from '../proving/instrument-store.ts';
import { readRecording } from '../recording/reader.ts';
import type { RecordingStore } from '../recording/store.ts';
import { sent } from '../session/stage.ts';
import { simulatedPath } from '../session/survey.ts';
import { jobRouter } from './job-api.ts';

/**
 * The JSON API: what can be listed, taken home, and kept together in jobs.
 * @param replayed path of the recording that the daemon was started to play
 */
export function apiRouter(
  store: RecordingStore,
  jobs: JobStore,
  profiles: ProfileBook,
  instruments: InstrumentStore,
  demo: boolean,
  replayed?: string,
): Router {
  const api = Router();

  api.get('/recordings', async (_request, response) => {
    const { recordings } = await store.list();
    response.json(recordings satisfies RecordingList);
  });

  api.get('/ports', async (_request, response) => {
    const simulated = demo ? [{ path: simulatedPath, label: 'simulated instrument of the demo' }] : [];
    const list: PortList = {
      ports: [...simulated, ...(await withIdentities(await listPorts()))],
      profiles: profiles.all.filter(tellsMetal).map(listed),
    };
    response.json(list);
  });

  api.get('/instruments', async (_request, response) => {
    const is = await whereNow();
    const asked = profiles.all.filter(({ talk }) => talk.kind === 'on-request');
    response.json({
      instruments: current(await instruments.proved()).map((proved) => ({
        proved,
        is: proved.proving.port === undefined ? 'typed' : is(proved.proving.port),
      })),
      asked: asked.map(({ id, title }) => ({ id, title })),
    } satisfies InstrumentList);
  });

  api.get('/recordings/:id', async (request, response) => {
    sendRecording(response, await store.find(request.params.id), request.params.id);
  });

  if (replayed !== undefined) {
    api.get('/replayed', (_request, response) => sendRecording(response, replayed, 'recording'));
  }

  api.get('/recordings/:id/sheet.json', async (request, response) => {
    response.json(toSheet(await sessionOf(store, request.params.id)));
  });

  api.get('/recordings/:id/result.json', async (request, response) => {
    const reference = references.find((name) => name === request.query.reference);
    const result = resultOf(await sessionOf(store, request.params.id), reference);
    response.type('json').send(`${JSON.stringify(result, null, 2)}\n`);
  });

  api.get('/recordings/:id/readings.csv', async (request, response) => {
    const csv = toCsv(await sessionOf(store, request.params.id));
    response.type('text/csv').attachment(`${request.params.id}.csv`).send(csv);
  });

  api.use('/jobs', jobRouter(jobs, store));

  api.use((_request, response) => {
    response
      .status(404)
      .json({ code: 'command.invalid', place: 'address', message: 'is not there', remedy: '' });
  });
  api.use((error: unknown, _request: Request, response: Response, next: NextFunction) => {
    // Of a request that can't even be understood, the server speaks.
    const misunderstood = typeof (error as { status?: unknown } | null)?.status === 'number';
    if (response.headersSent || misunderstood) return next(error);
    response.status(statusOf(error)).json(sent(error));
  });
  return api;
}

function statusOf(error: unknown): number {
  if (isWayscribeError(error, 'recording.notFound') || isWayscribeError(error, 'job.notFound')) return 404;
  return isWayscribeError(error) ? 422 : 500;
}

function sendRecording(response: Response, path: string, name: string): void {
  response.type('application/x-ndjson').attachment(`${name}.jsonl`);
  createReadStream(path)
    .on('error', () => response.destroy())
    .pipe(response);
}

function tellsMetal({ channels }: Profile): boolean {
  return channels.some(({ quantity }) => quantity === 'slope' || quantity === 'length');
}

function listed({ id, title, channels }: Profile): PortList['profiles'][number] {
  const tilt = channels.find(({ quantity }) => quantity === 'slope')?.unit as TiltUnit | undefined;
  const height = channels.find(({ quantity }) => quantity === 'length')?.unit as HeightUnit | undefined;
  return { id, title, units: { ...(tilt && { tilt }), ...(height && { height }) } };
}

async function sessionOf(store: RecordingStore, id: string): Promise<Session> {
  const { header, events } = await readRecording(await store.find(id), { skipReadings: true });
  return fold(header, events);
}
