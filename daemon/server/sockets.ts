import type { IncomingMessage, Server } from 'node:http';
import { type RawData, type WebSocket, WebSocketServer } from 'ws';
import { WayscribeError } from '../../shared/errors.ts';
import { fromPageSchema, type ToPage } from '../../shared/messages.ts';
import { type Stage, sent } from '../session/stage.ts';
import type { Right } from './access.ts';
import { isOwnRequest } from './guard.ts';
import { Rate } from './rate.ts';

const limits = {
  messageBytes: 64 * 1024,
  /** Commands of one page that wait to be answered; more are not read from its socket. */
  waiting: 32,
  pages: 64,
  /** Of these, pages from the network, so that this computer always finds room; and of one address. */
  strangers: 48,
  perAddress: 16,
  /** What pages from the network may ask. */
  commands: { perS: 20, burst: 60 },
  /** With more than this waiting, a page gets no needle values. */
  slowBytes: 128 * 1024,
  /** With more than this waiting beside its first snapshot, a page is cut off; it comes back and starts anew. */
  stalledBytes: 8 * 1024 * 1024,
  /** With more than this waiting for all of them, the one that waits for most is cut off. */
  allBytes: 64 * 1024 * 1024,
};

/** What may be left out for a page that can't follow: the next one says it all. */
const droppable: ReadonlySet<ToPage['type']> = new Set<ToPage['type']>(['live', 'bench', 'bench-live']);

export interface Gate {
  port(): number;
  /** Whether devices in the network are let in. */
  readonly lan: boolean;
  rightOf(request: IncomingMessage): Right;
}

export interface Pages {
  /** Cuts off the pages of a device; they come back with the right that is left to them. */
  cutOff(device: string): void;
  close(): void;
}

interface Caller extends Right {
  readonly address: string;
  /** How much may wait for it. */
  readonly mostBytes: number;
}

/**
 * Pages on the WebSocket `/ws`: everything of the stage goes out to all of them, the commands of those that may
 * control come in. Needle values are dropped for a page that can't follow; events never are.
 */
export function servePages(server: Server, stage: Stage, gate: Gate): Pages {
  const sockets = new WebSocketServer({ noServer: true, maxPayload: limits.messageBytes });
  const callers = new Map<WebSocket, Caller>();
  const rate = new Rate(limits.commands);

  server.on('upgrade', (request, socket, head) => {
    socket.on('error', () => socket.destroy());
    const known = request.url === '/ws' && isOwnRequest(request, gate.port());
    const right = gate.rightOf(request);
    const address = request.socket.remoteAddress ?? '';
    if (!known || !hasRoom([...callers.values()], right, address)) {
      const answer = known ? '503 Service Unavailable' : '403 Forbidden';
      socket.end(`HTTP/1.1 ${answer}\r\nConnection: close\r\n\r\n`);
      return;
    }
    sockets.handleUpgrade(request, socket, head, (page) => {
      const hello = JSON.stringify(stage.hello());
      const caller = { ...right, address, mostBytes: limits.stalledBytes + hello.length };
      callers.set(page, caller);
      page.on('close', () => callers.delete(page));
      page.on('error', () => page.terminate());
      let waiting = 0;
      page.on('message', async (data, isBinary) => {
        if (isBinary) return page.close(1003, 'text only');
        if (caller.access !== 'local' && !rate.allows(caller.address)) return page.close(1008, 'too fast');
        waiting += 1;
        if (waiting === limits.waiting) page.pause();
        await answer(page, stage, caller, data);
        if (waiting === limits.waiting) page.resume();
        waiting -= 1;
      });
      tell(page, { type: 'access', access: caller.access, lan: gate.lan });
      page.send(hello);
    });
  });
  const telling = stage.messages$.subscribe((message) => {
    const text = JSON.stringify(message);
    for (const page of sockets.clients) {
      if (page.bufferedAmount > (callers.get(page)?.mostBytes ?? 0)) page.terminate();
      else if (!droppable.has(message.type) || page.bufferedAmount <= limits.slowBytes) page.send(text);
    }
    cutBack(sockets.clients);
  });
  return {
    cutOff(device) {
      for (const [page, caller] of callers) if (caller.device === device) page.terminate();
    },
    close() {
      telling.unsubscribe();
      for (const page of sockets.clients) page.terminate();
      sockets.close();
    },
  };
}

function hasRoom(callers: readonly Caller[], { access }: Right, address: string): boolean {
  if (callers.length >= limits.pages) return false;
  if (access === 'local') return true;
  const strangers = callers.filter((caller) => caller.access !== 'local');
  const alike = strangers.filter((caller) => caller.address === address);
  return strangers.length < limits.strangers && alike.length < limits.perAddress;
}

/** Many slow pages together must not fill the memory either. */
function cutBack(pages: ReadonlySet<WebSocket>): void {
  let [all, most]: [number, WebSocket | null] = [0, null];
  for (const page of pages) {
    all += page.bufferedAmount;
    if (page.bufferedAmount > (most?.bufferedAmount ?? 0)) most = page;
  }
  if (all > limits.allBytes) most?.terminate();
}

async function answer(page: WebSocket, stage: Stage, { access }: Right, data: RawData): Promise<void> {
  const parsed = fromPageSchema.safeParse(jsonOrNothing(data));
  if (!parsed.success) {
    const [issue] = parsed.error.issues;
    const place = issue?.path.join('.') || 'message';
    tell(page, {
      type: 'answer',
      to: askedIn(data),
      error: { code: 'command.invalid', place, message: issue?.message ?? 'is no message', remedy: '' },
    });
    return;
  }
  const { ask, command } = parsed.data;
  try {
    if (command.do === 'since') {
      const missed = stage.since(command.seq);
      if (missed) tell(page, missed);
    } else {
      if (access === 'watching') throw onlyWatching();
      await stage.obey(command);
    }
    tell(page, { type: 'answer', to: ask, error: null });
  } catch (error) {
    tell(page, { type: 'answer', to: ask, error: sent(error) });
  }
}

function onlyWatching(): WayscribeError {
  return new WayscribeError(
    'command.notPaired',
    'this device',
    'this device only watches',
    'pair it at the computer that Wayscribe runs on',
  );
}

function tell(page: WebSocket, message: ToPage): void {
  if (page.readyState === page.OPEN) page.send(JSON.stringify(message));
}

function jsonOrNothing(data: RawData): unknown {
  try {
    return JSON.parse(String(data));
  } catch {
    return undefined;
  }
}

/** The number of a message that is wrong elsewhere, so that whoever asked still gets an answer. */
function askedIn(data: RawData): number {
  const message = jsonOrNothing(data);
  const ask = typeof message === 'object' && message !== null && 'ask' in message ? message.ask : null;
  return Number.isSafeInteger(ask) ? (ask as number) : 0;
}
