import { mkdtemp, readFile, rm, stat } from 'node:fs/promises';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { type Daemon, startDaemon } from '../daemon/daemon.ts';
import { demoSetup } from '../daemon/simulate/scenario.ts';
import { PageClient } from './tools/page-client.ts';
import { type SocketTalk, Stranger } from './tools/stranger.ts';

const start = { ask: 1, command: { do: 'start', setup: demoSetup } };

test.runIf(process.platform === 'linux')(
  'without --lan nobody in the network gets a connection',
  async () => {
    const folder = await mkdtemp(join(tmpdir(), 'wayscribe-'));
    const daemon = await startDaemon({ mode: 'demo', folder, port: 0 });
    expect(daemon.pairing).toBeNull();
    await expect(new Stranger(daemon.port).ask('/')).rejects.toMatchObject({ code: 'ECONNREFUSED' });
    const local = new Stranger(daemon.port, '127.0.0.1');
    expect((await local.post('/api/devices/invite', {})).status).toBe(404);
    await daemon.close();
    await rm(folder, { recursive: true, force: true });
  },
);

// Another address of the loopback network stands for another computer: only on Linux is it there by itself.
describe.runIf(process.platform === 'linux')('with --lan, a device in the network', () => {
  let folder = '';
  let daemon: Daemon;
  let local: Stranger;
  let tablet: Stranger;
  const talks: SocketTalk[] = [];

  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'wayscribe-'));
  });
  beforeEach(async () => {
    daemon = await startDaemon({ mode: 'demo', folder, port: 0, lan: true });
    local = new Stranger(daemon.port, '127.0.0.1');
    tablet = new Stranger(daemon.port);
  });
  afterEach(async () => {
    for (const talk of talks.splice(0)) talk.close();
    await daemon.close();
  });
  afterAll(() => rm(folder, { recursive: true, force: true }));

  async function open(who: Stranger): Promise<SocketTalk> {
    const talk = await who.socket({ origin: who.origin }).opened();
    talks.push(talk);
    await talk.first('hello');
    return talk;
  }
  async function pair(who: Stranger): Promise<void> {
    const { headers, status } = await who.post('/api/pair', { token: daemon.pairing!.invite().token });
    expect(status).toBe(200);
    who.cookie = String(headers['set-cookie']).split(';')[0]!;
  }

  test('sees the page and the survey, and is refused every command', async () => {
    expect((await tablet.ask('/')).status).toBe(200);
    const talk = await open(tablet);
    expect(talk.messages[0]).toEqual({ type: 'access', access: 'watching', lan: true });
    talk.send(start);
    expect(await talk.first('answer')).toMatchObject({ to: 1, error: { code: 'command.notPaired' } });
    expect(daemon.pairing!.devices).toEqual([]);

    const page = await PageClient.open(daemon.url);
    expect(page.last('access')).toEqual({ type: 'access', access: 'local', lan: true });
    expect(await page.ask({ do: 'note', text: 'nobody began' })).toMatchObject({ code: 'take.noSession' });
    expect(await page.ask({ do: 'start', setup: demoSetup as never })).toBeNull();
    const shown = talk.messages.findLast(({ type }) => type === 'hello');
    expect(shown?.session).toMatchObject({ header: { id: page.header!.id } });
    page.close();
  });

  test('controls after pairing, with a token that works once, and a cookie that no script reads', async () => {
    const { token } = daemon.pairing!.invite();
    const first = await tablet.post('/api/pair', { token });
    expect(first.status).toBe(200);
    const cookie = String(first.headers['set-cookie']);
    expect(cookie).toMatch(/; Path=\/; Expires=.*; HttpOnly; SameSite=Strict$/);
    expect((await tablet.post('/api/pair', { token })).status).toBe(403);

    tablet.cookie = cookie.split(';')[0]!;
    const talk = await open(tablet);
    expect(talk.messages[0]).toMatchObject({ access: 'paired' });
    talk.send({ ask: 4, command: { do: 'note', text: 'from the tablet' } });
    expect(await talk.first('answer')).toMatchObject({ to: 4 });
    expect((await talk.first('answer')).error).not.toMatchObject({ code: 'command.notPaired' });

    // What is on disk is of no use to whoever reads it.
    const file = await readFile(join(folder, 'paired.json'), 'utf8');
    expect(file).not.toContain(tablet.cookie.split('.')[1]);
    expect((await stat(join(folder, 'paired.json'))).mode & 0o077).toBe(0);
  });

  test('stays paired over a restart, and is put out at once when that is taken away', async () => {
    await pair(tablet);
    await daemon.close();
    daemon = await startDaemon({ mode: 'demo', folder, port: daemon.port, lan: true });
    const talk = await open(tablet);
    expect(talk.messages[0]).toMatchObject({ access: 'paired' });
    const listed = JSON.parse((await local.ask('/api/devices')).body);
    const id = decodeURIComponent(tablet.cookie.split('=')[1]!).split('.')[0]!;
    expect(listed.map((device: { id: string }) => device.id)).toContain(id);
    expect((await local.post(`/api/devices/${id}`, {}, 'DELETE')).status).toBe(200);
    await talk.over;
    expect((await open(tablet)).messages[0]).toMatchObject({ access: 'watching' });
    await daemon.close();
    daemon = await startDaemon({ mode: 'demo', folder, port: daemon.port, lan: true });
    expect((await open(tablet)).messages[0]).toMatchObject({ access: 'watching' });
  });

  test.each([
    ['a made-up token', { token: 'a'.repeat(32) }],
    ['nothing', {}],
    ['a token and more', { token: 'a'.repeat(32), more: 1 }],
    ['a token that is no text', { token: ['a'] }],
  ])('is not paired by %s', async (_what, body) => {
    daemon.pairing!.invite();
    const { status, headers } = await tablet.post('/api/pair', body);
    expect(status).toBe(403);
    expect(headers['set-cookie']).toBeUndefined();
  });

  test('is not paired by a cookie that is made up', async () => {
    await pair(tablet);
    const [name, value] = tablet.cookie.split('=');
    const [id] = value!.split('.');
    for (const made of [`${id}.`, `${id}.${'a'.repeat(32)}`, '.', '', 'x.y', '__proto__.a']) {
      tablet.cookie = `${name}=${made}`;
      expect((await open(tablet)).messages[0], made).toMatchObject({ access: 'watching' });
    }
  });

  test('can neither invite, list nor revoke, not even when it is paired', async () => {
    await pair(tablet);
    expect((await tablet.ask('/api/devices')).status).toBe(403);
    expect((await tablet.post('/api/devices/invite', {})).status).toBe(403);
    expect((await tablet.post('/api/devices/x', {}, 'DELETE')).status).toBe(403);
  });

  test('a page of elsewhere can neither invite on this computer nor spend a token', async () => {
    const { token } = daemon.pairing!.invite();
    const json = { 'content-type': 'application/json' };
    for (const [who, headers] of [
      [local, json],
      [local, { ...json, origin: 'http://evil.example' }],
      [local, { ...json, origin: 'null' }],
      [local, { 'content-type': 'text/plain', origin: local.origin }],
    ] as const) {
      expect((await who.ask('/api/devices/invite', { method: 'POST', headers, body: '{}' })).status).toBe(
        403,
      );
      const body = JSON.stringify({ token });
      expect((await who.ask('/api/pair', { method: 'POST', headers, body })).status).toBe(403);
    }
    expect((await tablet.post('/api/pair', { token })).status).toBe(200);
  });

  test.each([
    ['a name that leads here (rebinding)', 'evil.example'],
    ['a local name', 'localhost'],
    ['the local address', '127.0.0.1'],
    ['another address of this computer', '127.0.0.3'],
  ])('is not answered under %s', async (_what, name) => {
    const host = `${name}:${daemon.port}`;
    expect((await tablet.ask('/', { headers: { host } })).status).toBe(403);
    expect((await tablet.ask('/api/recordings', { headers: { host } })).status).toBe(403);
    expect(await tablet.socket({ host }).over).toBe(403);
  });

  test('gets no socket for a page of elsewhere, whatever its cookie (cross-site)', async () => {
    await pair(tablet);
    for (const origin of ['http://evil.example', 'null', `https://127.0.0.2:${daemon.port}`, local.origin]) {
      expect(await tablet.socket({ origin }).over, origin).toBe(403);
    }
  });

  test('gets every answer with the headers that keep foreign code out, errors too', async () => {
    for (const [path, expected] of [
      ['/', 200],
      ['/api/recordings', 200],
      ['/api/none', 404],
      ['/none', 404],
      ['/%', 404],
      ['/api/recordings/%', 400],
    ] as const) {
      const { status, headers, body } = await tablet.ask(path);
      expect(status, path).toBe(expected);
      const policy = String(headers['content-security-policy']);
      expect(policy, path).toContain("default-src 'none'");
      expect(policy, path).not.toContain('unsafe');
      expect(headers).toMatchObject({
        'x-content-type-options': 'nosniff',
        'x-frame-options': 'DENY',
        'referrer-policy': 'no-referrer',
        'cross-origin-resource-policy': 'same-origin',
        'cross-origin-opener-policy': 'same-origin',
      });
      expect(headers['x-powered-by']).toBeUndefined();
      expect(body, path).not.toMatch(/node_modules|\bat .*\.(ts|js):/);
    }
  });

  test('is bounded in requests, and this computer is not', async () => {
    const asked = await Promise.all(
      Array.from({ length: 40 }, async () => {
        const some: number[] = [];
        for (let k = 0; k < 5; k += 1) some.push((await tablet.ask('/api/recordings')).status);
        return some;
      }),
    );
    expect(new Set(asked.flat())).toEqual(new Set([200, 429]));
    for (let k = 0; k < 200; k += 1) expect((await local.ask('/api/devices')).status).toBe(200);
  });

  test('is bounded in commands: one that sends without end is cut off', async () => {
    const talk = await open(tablet);
    for (let k = 0; k < 500; k += 1) talk.send({ ask: k, command: { do: 'since', seq: 0 } });
    expect(await talk.over).toBe(1008);
    expect((await local.ask('/')).status).toBe(200);
  });

  test('is bounded in sockets, and this computer still finds room', async () => {
    for (let k = 0; k < 16; k += 1) await open(tablet);
    expect(await tablet.socket().over).toBe(503);
    const page = await PageClient.open(daemon.url);
    page.close();
  });

  test('is bounded in connections that say nothing', async () => {
    const idle = Array.from({ length: 60 }, () =>
      connect({ port: daemon.port, host: tablet.address, localAddress: tablet.address }).on(
        'error',
        () => {},
      ),
    );
    const closed = await Promise.all(
      idle.slice(48).map((one) => new Promise<boolean>((resolve) => one.once('close', () => resolve(true)))),
    );
    expect(closed).toHaveLength(12);
    expect((await local.ask('/')).status).toBe(200);
    for (const one of idle) one.destroy();
  });

  test('is bounded in size: headers, body, message', async () => {
    expect((await tablet.ask('/', { headers: { 'x-long': 'a'.repeat(9000) } })).status).toBe(431);
    const body = JSON.stringify({ token: 'a'.repeat(4000) });
    const headers = { origin: tablet.origin, 'content-type': 'application/json' };
    expect((await tablet.ask('/api/pair', { method: 'POST', headers, body })).status).toBe(413);
    const talk = await open(tablet);
    talk.send(`"${'1'.repeat(70_000)}"`);
    expect(await talk.over).toBe(1009);
  });

  test('changes no job before it is paired', async () => {
    const asked = { name: 'A lathe', by: 'tablet' };
    expect(await tablet.post('/api/jobs', asked)).toMatchObject({ status: 403 });
    expect((await tablet.ask('/api/jobs')).status).toBe(200);
    await pair(tablet);
    expect((await tablet.post('/api/jobs', asked)).status).not.toBe(403);
  });
});
