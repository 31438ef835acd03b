import { once } from 'node:events';
import { mkdtemp, rm } from 'node:fs/promises';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { WebSocket } from 'ws';
import { type Daemon, startDaemon } from '../daemon/daemon.ts';

let folder = '';
let daemon: Daemon;
let port = 0;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'wayscribe-'));
  daemon = await startDaemon({ mode: 'serve', folder, port: 0 });
  port = Number(new URL(daemon.url).port);
});
afterAll(async () => {
  await daemon.close();
  await rm(folder, { recursive: true, force: true });
});

function status(headers: Record<string, string>, path = '/api/recordings'): Promise<number> {
  return new Promise((resolve, reject) => {
    request({ host: '127.0.0.1', port, path, headers }, (response) => {
      response.resume();
      resolve(response.statusCode ?? 0);
    })
      .on('error', reject)
      .end();
  });
}

const socket = (headers: Record<string, string>) => new WebSocket(`ws://127.0.0.1:${port}/ws`, { headers });

describe('whoever is not the own page', () => {
  test.each([
    ['the own page', {}, 200],
    ['a page of elsewhere', { origin: 'http://evil.example' }, 403],
    ['a name that only begins like this computer', { host: 'localhost.evil.example' }, 403],
    ['a name of elsewhere that leads here', { host: 'evil.example' }, 403],
    ['the right name with another port', { host: 'localhost:1' }, 403],
  ])('%s is answered as it should be', async (_who, headers, expected) => {
    expect(await status(headers)).toBe(expected);
  });

  test('gets no socket', async () => {
    for (const headers of [{ origin: 'http://evil.example' }, { host: 'evil.example' }]) {
      const [, response] = (await once(socket(headers), 'unexpected-response')) as [
        unknown,
        { statusCode: number },
      ];
      expect(response.statusCode).toBe(403);
    }
  });

  test('leads no path out of the folder', async () => {
    for (const path of [
      '/api/recordings/..%2f..%2fetc%2fpasswd',
      '/..%2fpackage.json',
      '/api/recordings/%00',
    ]) {
      expect(await status({}, path), path).toBe(404);
    }
  });
});

test.each([
  ['{', 'message'],
  ['null', 'message'],
  ['{"ask":7}', 'command'],
  ['{"ask":7,"command":{"do":"start"}}', 'command.setup'],
  ['{"ask":7,"command":{"do":"fly"}}', 'command.do'],
  ['{"ask":7,"command":{"do":"since","seq":-1}}', 'command.seq'],
  ['{"ask":7,"command":{"do":"resume","id":"../../etc/passwd"}}', '"../../etc/passwd"'],
  ['{"ask":7,"command":{"do":"take","by":"key","more":1}}', 'command'],
])('a message like %s is answered with its place', async (text, place) => {
  const page = socket({});
  const answer = new Promise<{ to: number; error: { place: string } }>((resolve) => {
    page.on('message', (data) => {
      const message = JSON.parse(String(data));
      if (message.type === 'answer') resolve(message);
    });
  });
  await once(page, 'open');
  page.send(text);
  const { to, error } = await answer;
  expect(error.place).toBe(place);
  expect(to).toBe(text.includes('"ask":7') ? 7 : 0);
  page.terminate();
});

test('a message that is too large ends its own socket and nothing else', async () => {
  const page = socket({});
  await once(page, 'open');
  page.send(`{"ask":1,"command":{"do":"type","text":"${'1'.repeat(200_000)}"}}`);
  const [code] = await once(page, 'close');
  expect(code).toBe(1009);
  expect(await status({})).toBe(200);
});
