import { readFile } from 'node:fs/promises';
import { extname, join } from 'node:path';
import { json, type Request, type Response, Router, raw } from 'express';
import type { z } from 'zod';
import { WayscribeError } from '../../shared/errors.ts';
import type { NewChange } from '../../shared/job/document.ts';
import type { Job } from '../../shared/job/job.ts';
import {
  askedChangesSchema,
  askedFileSchema,
  type JobLink,
  type JobList,
  type KeptFile,
  newJobSchema,
} from '../../shared/job/wire.ts';
import { addFile } from '../job/add-file.ts';
import { digestOf, type JobFolder } from '../job/job-folder.ts';
import { asFile, type JobStore } from '../job/job-store.ts';
import { makeReport } from '../job/make-report.ts';
import { exportOf, sentJob } from '../job/send-job.ts';
import { verifyJob } from '../job/verify-job.ts';
import { zipJob } from '../job/zip-job.ts';
import type { RecordingStore } from '../recording/store.ts';
import { reportPolicy } from './guard.ts';

const limits = { changes: '1mb', file: '64mb' };

/** Jobs: what is in them, what comes in, what is taken home. Changes are added; nothing is ever overwritten. */
export function jobRouter(jobs: JobStore, recordings: RecordingStore): Router {
  const router = Router();
  router.use(readingRoutes(jobs));
  router.use(writingRoutes(jobs, recordings));
  return router;
}

function readingRoutes(jobs: JobStore): Router {
  const router = Router();

  router.get('/', async (_request, response) => {
    response.json((await jobs.list()) satisfies JobList);
  });

  router.get('/:id', async ({ params: { id } }, response) => {
    response.json(await sentJob(id, await jobs.open(id)));
  });

  router.get('/:id/link', async ({ params: { id } }, response) => {
    response.json({ link: (await jobs.open(id)).link } satisfies JobLink);
  });

  router.get('/:id/verify', async ({ params: { id } }, response) => {
    response.json(await verifyJob((await jobs.open(id)).path));
  });

  router.get('/:id/zip', async ({ params: { id } }, response) => {
    const { bytes } = await zipJob((await jobs.open(id)).path);
    response.type('application/zip').attachment(`${id}.zip`).send(bytes);
  });

  // Among the files, so that its links to photographs hold as they do in the folder of the job.
  router.get('/:id/files', async ({ params: { id }, query }, response) => {
    const { by } = read(askedFileSchema.pick({ by: true }), query);
    const text = await makeReport(await jobs.open(id), { by, at: new Date().toISOString() });
    response.set('Content-Security-Policy', reportPolicy).type('html').send(text);
  });

  router.get('/:id/surveys/:no/:what', async ({ params: { id, no, what } }, response) => {
    const found = await exportOf(await jobs.open(id), Number(no), what);
    if (!found) throw notInJob(`${no}/${what}`);
    response.type(found.type).attachment(found.name).send(found.text);
  });

  router.get('/:id/files/:file', async ({ params: { id, file } }, response) => {
    const { path, job } = await jobs.open(id);
    const known = filesOf(job).find((each) => each === file);
    if (!known) throw notInJob(file);
    // A photograph is shown; everything else is taken home.
    if (job.photos.some((photo) => photo.file === known)) response.type(extname(known));
    else response.type('application/octet-stream').attachment(known);
    response.send(await readFile(join(path, known)));
  });
  return router;
}

function writingRoutes(jobs: JobStore, recordings: RecordingStore): Router {
  const router = Router();
  const change = <T>(id: string, work: (folder: JobFolder) => Promise<T>): Promise<T> =>
    jobs.turns.take(async () => work(await jobs.open(id)));

  router.post('/', json({ limit: limits.changes }), async (request, response) => {
    const head = read(newJobSchema, request.body);
    response.status(201).json({ id: await jobs.turns.take(() => jobs.create(head)) });
  });

  router.post('/:id/changes', json({ limit: limits.changes }), async (request, response) => {
    const { by, changes } = read(askedChangesSchema, request.body);
    const stamp = { at: new Date().toISOString(), by };
    const stamped = changes.map((asked) => ({ ...asked, ...stamp }) as unknown as NewChange);
    await change(request.params.id, (folder) => folder.add(...stamped));
    response.status(204).end();
  });

  router.post('/:id/recordings/:recording', json(), async (request: AddRequest, response: Response) => {
    const told = toldOf(read(askedFileSchema, request.body));
    const path = await recordings.find(request.params.recording!);
    response.status(201).json(await change(request.params.id!, (folder) => taken(folder, path, told)));
  });

  router.post(
    '/:id/files/:file',
    raw({ type: () => true, limit: limits.file }),
    async (request: AddRequest, response: Response) => {
      const told = toldOf(read(askedFileSchema, request.query));
      if (!(request.body instanceof Buffer)) throw notInJob('an empty file');
      const kept = await asFile(request.params.file!, request.body, (path) =>
        change(request.params.id!, (folder) => taken(folder, path, told)),
      );
      response.status(201).json(kept);
    },
  );

  router.post('/:id/report', json(), async (request: AddRequest, response: Response) => {
    const { by } = read(askedFileSchema.pick({ by: true }), request.body);
    const kept = await change(request.params.id!, async (folder) => {
      const text = await makeReport(folder, { by, at: new Date().toISOString() });
      return asFile('report.html', Buffer.from(text), (path) => folder.take(path));
    });
    response.status(201).json(kept satisfies KeptFile);
  });
  return router;
}

type AddRequest = Request<Record<string, string>>;
type Told = Parameters<typeof addFile>[2];

function toldOf({ by, surface, round, words }: z.output<typeof askedFileSchema>): Told {
  return {
    by,
    at: new Date().toISOString(),
    ...(surface !== undefined && { surface }),
    ...(round !== undefined && { round }),
    ...(words !== undefined && { words }),
  };
}

async function taken(folder: JobFolder, path: string, told: Told): Promise<KeptFile> {
  await addFile(folder, path, told);
  const newest = folder.job.changes.findLast((each) => 'file' in each)!;
  return { file: newest.file, sha256: await digestOf(join(folder.path, newest.file)) };
}

/** Every file that the list of changes names, also of surveys that were withdrawn. */
function filesOf({ changes }: Job): string[] {
  return changes.flatMap((each) => ('file' in each ? [each.file] : []));
}

function read<T>(schema: z.ZodType<T>, value: unknown): T {
  const parsed = schema.safeParse(value);
  if (parsed.success) return parsed.data;
  const [issue] = parsed.error.issues;
  throw new WayscribeError(
    'command.invalid',
    issue?.path.join('.') ?? '',
    issue?.message ?? 'is not readable',
  );
}

function notInJob(what: string): WayscribeError {
  return new WayscribeError('job.notFound', JSON.stringify(what.slice(0, 120)), 'is not in this job');
}
