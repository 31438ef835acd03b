import { hash } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Daemon, startDaemon } from '../../daemon/daemon.ts';
import { openJob } from '../../shared/job/open.ts';
import { type JobList, jobVerdictSchema, sentJobSchema } from '../../shared/job/wire.ts';
import { historiesOf } from '../../shared/report/history.ts';

const rebuild = join(import.meta.dirname, '..', '..', 'recordings', 'rebuild');

describe('jobs over HTTP', () => {
  const folder = mkdtempSync(join(tmpdir(), 'wayscribe-test-'));
  let daemon: Daemon;
  beforeAll(async () => {
    daemon = await startDaemon({ mode: 'demo', folder, port: 0 });
  });
  afterAll(async () => {
    await daemon.close();
    rmSync(folder, { recursive: true, force: true });
  });

  const get = (path: string, init: RequestInit = {}) => fetch(`${daemon.url}api/jobs${path}`, init);
  const post = (path: string, body: unknown) =>
    get(path, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    });
  const postFile = (path: string, bytes: Uint8Array<ArrayBuffer>) =>
    get(path, { method: 'POST', headers: { 'content-type': 'application/octet-stream' }, body: bytes });
  const opened = async (id: string) => openJob(sentJobSchema.parse(await (await get(`/${id}`)).json()));

  test('the demo begins with a copy of the invented rebuild, and never touches the original', async () => {
    const list = (await (await get('')).json()) as JobList;
    expect(list).toMatchObject([
      { id: 'rebuild', part: 'Gap-bed lathe, bed 03', problem: null, surfaces: [{ name: 'front way' }, {}] },
    ]);
    const { job, surveys } = await opened('rebuild');
    expect(job.surfaces.get('front way')!.rounds).toHaveLength(5);
    expect(surveys).toHaveLength(7);
    const newest = surveys.findLast(({ record }) => record.surface === 'front way')!;
    expect(newest.result.verdicts[0]!.verdict).toBe('within');
    const before = await readFile(join(rebuild, 'job.json'), 'utf8');
    expect(
      (await post('/rebuild/changes', { by: 'a test', changes: [{ change: 'note', text: 'x' }] })).status,
    ).toBe(204);
    expect(await readFile(join(rebuild, 'job.json'), 'utf8')).toBe(before);
    expect(await readFile(join(folder, 'rebuild', 'job.json'), 'utf8')).not.toBe(before);
  });

  test('a report is sent that runs nothing, and a kept one is verified with the job', async () => {
    const response = await get('/rebuild/files/?by=a%20test');
    expect(response.headers.get('content-security-policy')).toContain("default-src 'none'");
    expect(response.headers.get('content-security-policy')).not.toContain('script-src');
    expect(await response.text()).toContain('What was found and what is left');
    const names = ['report.html', 'report-2.html'];
    for (const file of names) {
      expect(await (await post('/rebuild/report', { by: 'a test' })).json()).toMatchObject({ file });
    }
    const verdict = jobVerdictSchema.parse(await (await get('/rebuild/verify')).json());
    expect(verdict.problems).toEqual([]);
    expect(verdict.files.filter((file) => file.endsWith('.html'))).toHaveLength(2);
  });

  test('a survey whose file cannot be read leaves the others as they are', async () => {
    const path = join(folder, 'rebuild', 'front-way-in-work-2.jsonl');
    const text = await readFile(path, 'utf8');
    const whole = await opened('rebuild');
    const passes = (job: typeof whole) =>
      historiesOf(job.job, job.surveys).map((history) => history.passes.flat().length);
    for (const broken of [null, '', text.slice(0, 40), text.replace('"type":"take"', '"type":"tak"')]) {
      await (broken === null ? rm(path) : writeFile(path, broken));
      const job = await opened('rebuild');
      const gone = job.unreadable.map(({ record }) => record.file);
      if (broken === null || broken.length < 50) {
        expect(gone).toEqual(['front-way-in-work-2.jsonl']);
        const report = await (await get('/rebuild/files/?by=a%20test')).text();
        expect(report).toContain('Front way in work 2 can’t be read, and nothing here rests on it');
        expect(report).toMatch(/39\.9/);
        const first = job.surveys[0]!.record.no;
        expect((await get(`/rebuild/surveys/${first}/result.json`)).status).toBe(200);
      }
      expect(job.surveys.length + job.unreadable.length).toBe(7);
      // What was scraped before it was scraped before the next one.
      expect(passes(job)).toEqual(passes(whole));
    }
    await writeFile(path, text);
  });

  test('a changed byte is found, named by its line', async () => {
    const path = join(folder, 'rebuild', 'front-way-in-work-2.jsonl');
    const text = await readFile(path, 'utf8');
    await writeFile(path, text.replace('"unit"', '"unot"'));
    const { problems } = jobVerdictSchema.parse(await (await get('/rebuild/verify')).json());
    expect(problems[0]).toMatchObject({ file: 'front-way-in-work-2.jsonl' });
    expect(problems[0]!.line).toBeGreaterThan(0);
    await writeFile(path, text);
  });

  test('begin, agree, bring in, write down, take home', async () => {
    const { id } = await (await post('', { part: 'Knee mill 7', owner: 'b' })).json();
    expect(id).toBe('knee-mill-7');
    const again = await (await post('', { part: 'Knee mill 7', owner: 'b' })).json();
    expect(again.id).toBe('knee-mill-7-2');

    const bytes = new Uint8Array(await readFile(join(rebuild, 'front-way-as-found.jsonl')));
    const query = new URLSearchParams({ by: 'a test', surface: 'front way', round: 'as found' });
    for (const file of ['found.jsonl', 'found-2.jsonl']) {
      expect(await (await postFile(`/${id}/files/found.jsonl?${query}`, bytes)).json()).toEqual({
        file,
        sha256: hash('sha256', bytes, 'hex'),
      });
    }
    const photo = new TextEncoder().encode('no real photo');
    const kept = await (await postFile(`/${id}/files/print.jpg?by=a&words=print`, photo)).json();
    const stations = { F0: { shows: true }, F1: { shows: false } };
    const changes = [
      {
        change: 'limits',
        surface: 'front way',
        limits: [{ figure: 'front way.straightness', max: 10, source: 'x' }],
      },
      { change: 'print', surface: 'front way', against: 'plate', stations, photo: kept },
    ];
    expect((await post(`/${id}/changes`, { by: 'a test', changes })).status).toBe(204);
    const { job } = await opened(id);
    expect(job.surfaces.get('front way')!.rounds[1]!.prints).toMatchObject([{ photo: kept }]);
    const shown = await get(`/${id}/files/print.jpg`);
    expect(shown.headers.get('content-type')).toBe('image/jpeg');
    expect(new Uint8Array(await shown.arrayBuffer())).toEqual(photo);

    const no = job.surfaces.get('front way')!.rounds[0]!.survey.no;
    for (const [what, words] of [
      ['sheet.json', '"walks"'],
      ['result.json', '"verdicts"'],
      ['readings.csv', 'seq,time,run'],
    ]) {
      expect(await (await get(`/${id}/surveys/${no}/${what}`)).text()).toContain(words);
    }
    const zip = Buffer.from(await (await get(`/${id}/zip`)).arrayBuffer());
    expect(zip.subarray(0, 2).toString()).toBe('PK');
    for (const name of await readdir(join(folder, id))) {
      if (!name.startsWith('.')) expect(zip.includes(`${id}/${name}`), name).toBe(true);
    }
  });

  test.each([
    [
      'an unknown change',
      { by: 'a', changes: [{ change: 'survey', surface: 'front way' }] },
      'command.invalid',
    ],
    ['nobody', { by: '', changes: [{ change: 'note', text: 'x' }] }, 'command.invalid'],
    [
      'a surface that is not there',
      { by: 'a', changes: [{ change: 'passes', surface: 'x', passes: [['F0']] }] },
      'job.invalid',
    ],
    ['a broken change', { by: 'a', changes: [{ change: 'surface', surface: 'x' }] }, 'job.invalid'],
    [
      'a photo that is not kept',
      {
        by: 'a',
        changes: [
          {
            change: 'print',
            surface: 'front way',
            against: 'p',
            stations: {},
            photo: { file: 'x.jpg', sha256: '0'.repeat(64) },
          },
        ],
      },
      'job.invalid',
    ],
  ])('%s is refused, and nothing is written', async (_, body, code) => {
    const before = await readFile(join(folder, 'rebuild', 'job.json'), 'utf8');
    const response = await post('/rebuild/changes', body);
    expect(response.status).toBe(422);
    expect(await response.json()).toMatchObject({ code });
    expect(await readFile(join(folder, 'rebuild', 'job.json'), 'utf8')).toBe(before);
  });

  test.each([
    '/nowhere',
    '/..%2Frebuild',
    '/rebuild/files/job.json',
    '/rebuild/files/..%2F..%2Fx',
    '/rebuild/surveys/1/x',
  ])('%s is not there', async (path) => expect((await get(path)).status).toBe(404));

  test('a page of elsewhere neither reads nor writes', async () => {
    const headers = { 'content-type': 'application/json', origin: 'http://elsewhere.example' };
    const body = JSON.stringify({ by: 'a', changes: [{ change: 'note', text: 'x' }] });
    expect((await get('/rebuild/changes', { method: 'POST', headers, body })).status).toBe(403);
    expect((await get('/rebuild', { headers })).status).toBe(403);
  });
});
