import { connect } from 'node:net';
import { WebSocket } from 'ws';
import { demoSetups } from '../../shared/session/demo-setups.ts';
import type { DaemonProcess } from '../tools/daemon-process.ts';
import { type Random, random } from '../tools/random.ts';
import { mutated } from './mutate.ts';

export interface ServerCount {
  readonly tries: number;
  /** What was answered with: codes of errors, or status of HTTP. */
  readonly answers: Readonly<Record<string, number>>;
  readonly faults: readonly string[];
  /** The longest that some sent together waited for all their answers, ms. */
  readonly slowestMs: number;
  /** How much more the daemon holds after collecting at the end than after the first fifth, MiB. */
  readonly grownMiB: number;
}

/** What has not come by then does not come: a machine busy with other things is given its time too. */
const hangMs = 5000;
const atOnce = 20;

const place = { run: 'front way out', at: ['F0', 'F1'] };
const commands = [
  { do: 'start', setup: demoSetups.way },
  { do: 'start', setup: demoSetups.plate },
  { do: 'take', by: 'key', insist: true },
  { do: 'type', text: '12.5' },
  { do: 'void', take: 3, reason: 'bumped' },
  { do: 'aim', place },
  { do: 'skip', place, reason: 'out of reach' },
  { do: 'note', text: 'oil', place },
  { do: 'print', against: 'plate', stations: { F0: { shows: true } } },
  { do: 'conditions', partC: 20, airC: 21, support: '3 feet', operator: 'visitor' },
  { do: 'hands-free', on: true },
  { do: 'run', run: 'front way back', on: true },
  { do: 'acknowledge-unit' },
  { do: 'finish' },
  { do: 'resume', id: '2026-01-01-bed' },
  { do: 'leave' },
  { do: 'bench', ports: [{ port: '/dev/none', profile: 'line-decimal' }] },
  { do: 'bind-instrument', name: 'level', port: '/dev/none' },
  { do: 'sim-lift' },
  { do: 'sim-set-down' },
  { do: 'sim-push' },
  { do: 'sim-walk', on: true },
  { do: 'since', seq: 0 },
].map((command, ask) => JSON.stringify({ ask, command }));

/** Sends damaged messages on the WebSocket; each must be answered, or end its own socket and nothing else. */
export function fuzzMessages(daemon: DaemonProcess, tries: number, seed: number): Promise<ServerCount> {
  let socket: Promise<WebSocket> | null = null;
  return run(daemon, tries, seed, async (numbers) => {
    socket ??= opened(daemon.url);
    const open = await socket;
    const texts = Array.from({ length: atOnce }, () =>
      mutated(commands[numbers.below(commands.length)]!, numbers, 1),
    );
    const [answered, closed] = await answers(open, texts);
    if (closed !== null) socket = null;
    return [...answered, ...(closed === null ? [] : [`closed ${closed}`])];
  }).finally(async () => (await socket)?.terminate());
}

/** Sends damaged requests, each on a connection of its own; each must be answered, or its connection ended. */
export function fuzzRequests(daemon: DaemonProcess, tries: number, seed: number): Promise<ServerCount> {
  const { port, host } = new URL(daemon.url);
  const head = (line: string, ...more: string[]) =>
    [`${line} HTTP/1.1`, `Host: ${host}`, 'Connection: close', ...more, '', ''].join('\r\n');
  const body = '{"token":"abcdefghijklmnopqrstuvwx"}';
  const json = [`Origin: http://${host}`, 'Content-Type: application/json', `Content-Length: ${body.length}`];
  const requests = [
    head('GET /'),
    head('HEAD /index.html'),
    head('GET /api/recordings', 'Cookie: wayscribe=a.b', 'Accept: */*'),
    head('GET /api/recordings/2026-01-01-bed/result.json?reference=ends'),
    head('GET /api/recordings/2026-01-01-bed/readings.csv', 'Range: bytes=0-10'),
    head('GET /api/ports', 'If-None-Match: "a"'),
    head(
      'GET /ws',
      'Upgrade: websocket',
      'Sec-WebSocket-Version: 13',
      'Sec-WebSocket-Key: AAAAAAAAAAAAAAAAAAAAAA==',
    ),
    head('POST /api/devices/invite', ...json) + body,
    head('POST /api/pair', ...json) + body,
    head('DELETE /api/devices/abc', ...json) + body,
    head('OPTIONS *'),
  ];
  return run(daemon, tries, seed, async (numbers) => {
    const texts = Array.from({ length: atOnce }, () =>
      mutated(requests[numbers.below(requests.length)]!, numbers),
    );
    return Promise.all(texts.map((text) => request(Number(port), text)));
  });
}

async function run(
  daemon: DaemonProcess,
  tries: number,
  seed: number,
  some: (numbers: Random) => Promise<string[]>,
): Promise<ServerCount> {
  const numbers = random(seed);
  const answers: Record<string, number> = {};
  const faults: string[] = [];
  let [before, slowestMs] = [0, 0];
  for (let done = 0; done < tries; done += atOnce) {
    if (before === 0 && done >= tries / 5) before = await daemon.heldMiB();
    const sent = performance.now();
    const came = await some(numbers);
    slowestMs = Math.max(slowestMs, performance.now() - sent);
    for (const answer of came) {
      answers[answer] = (answers[answer] ?? 0) + 1;
      if (answer.startsWith('fault')) faults.push(`near try ${done} of seed ${seed}: ${answer}`);
    }
    if (faults.length > 10) break;
  }
  return { tries, answers, faults, slowestMs, grownMiB: (await daemon.heldMiB()) - before };
}

async function opened(url: string): Promise<WebSocket> {
  const socket = new WebSocket(`${url.replace(/^http/, 'ws').replace('localhost', '127.0.0.1')}ws`);
  socket.on('error', () => {});
  await new Promise((resolve, reject) => {
    socket.once('open', resolve);
    socket.once('close', reject);
  });
  return socket;
}

/** What came for each text, in any order, and the code of the close if one of them ended the socket. */
function answers(socket: WebSocket, texts: readonly string[]): Promise<[string[], number | null]> {
  return new Promise((resolve) => {
    const came: string[] = [];
    const over = (code: number | null, ...more: string[]) => {
      clearTimeout(patience);
      socket.off('message', hear);
      socket.off('close', closed);
      resolve([[...came, ...more], code]);
    };
    const hear = (data: unknown) => {
      const message = JSON.parse(String(data));
      if (message.type !== 'answer') return;
      const { error } = message;
      const named = error === null || (error.place && error.message && error.place !== 'program');
      came.push(named ? (error?.code ?? 'done') : `fault: ${JSON.stringify(error)}`);
      if (came.length === texts.length) over(null);
    };
    const closed = (code: number) => over(code);
    const patience = setTimeout(
      () => over(null, `fault: no answer to one of ${JSON.stringify(texts)}`),
      hangMs,
    );
    socket.on('message', hear);
    socket.on('close', closed);
    // Bytes that are no UTF-8 end a socket; most messages are to get further than that.
    texts.forEach((text, k) => {
      const raw = k === 0 && text.length % 8 === 0;
      socket.send(raw ? Buffer.from(text, 'latin1') : text, { binary: false });
    });
  });
}

/** Status that is answered, or "ended" for a connection that was closed without a word. */
function request(port: number, text: string): Promise<string> {
  return new Promise((resolve) => {
    let came = '';
    const socket = connect({ port, host: '127.0.0.1' });
    const patience = setTimeout(() => {
      socket.destroy();
      resolve(`fault: no end to ${JSON.stringify(text)}`);
    }, hangMs);
    socket.setEncoding('latin1');
    socket.on('data', (part) => {
      if (came.length < 100) came += part;
    });
    socket.on('error', () => {});
    socket.on('close', () => {
      clearTimeout(patience);
      const status = /^HTTP\/1\.1 (\d\d\d)/.exec(came)?.[1];
      resolve(status === '500' ? `fault: 500 to ${JSON.stringify(text)}` : (status ?? 'ended'));
    });
    socket.end(Buffer.from(text, 'latin1'));
  });
}

/** What came out, for people. */
export function serverLine(
  name: string,
  { tries, answers, faults, slowestMs, grownMiB }: ServerCount,
): string {
  const most = Object.entries(answers).sort(([, a], [, b]) => b - a);
  return (
    `${name.padEnd(20)} ${tries} sent: ${most.map(([answer, n]) => `${n} × ${answer}`).join(', ')}; ` +
    `${faults.length} faults; slowest ${slowestMs.toFixed(0)} ms, memory ${grownMiB.toFixed(1)} MiB more`
  );
}
