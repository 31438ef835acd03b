import type { Server } from 'node:http';
import { type RawData, type WebSocket, WebSocketServer } from 'ws';
import { fromPageSchema, type ToPage } from '../../shared/messages.ts';
import { type Stage, sent } from '../session/stage.ts';
import { isOwnRequest } from './guard.ts';

const limits = {
  messageBytes: 64 * 1024,
  pages: 64,
  /** With more than this waiting, a page gets no needle values. */
  slowBytes: 128 * 1024,
  /** With more than this waiting, a page is cut off; it comes back and starts from a snapshot. */
  stalledBytes: 8 * 1024 * 1024,
};

/** What may be left out for a page that can't follow: the next one says it all. */
const droppable: ReadonlySet<ToPage['type']> = new Set<ToPage['type']>(['live', 'bench', 'bench-live']);

/**
 * Pages on the WebSocket `/ws`: everything of the stage goes out to all of them, their commands come in.
 * Needle values are dropped for a page that can't follow; events never are.
 */
export function servePages(server: Server, stage: Stage, port: () => number): { close(): void } {
  const sockets = new WebSocketServer({ noServer: true, maxPayload: limits.messageBytes });
  server.on('upgrade', (request, socket, head) => {
    const known = request.url === '/ws' && isOwnRequest(request, port());
    if (!known || sockets.clients.size >= limits.pages) {
      socket.end(
        `HTTP/1.1 ${known ? '503 Service Unavailable' : '403 Forbidden'}\r\nConnection: close\r\n\r\n`,
      );
      return;
    }
    sockets.handleUpgrade(request, socket, head, (page) => {
      page.on('error', () => page.terminate());
      page.on('message', (data, isBinary) => {
        if (isBinary) page.close(1003, 'text only');
        else void answer(page, stage, data);
      });
      tell(page, stage.hello());
    });
  });
  const telling = stage.messages$.subscribe((message) => {
    const text = JSON.stringify(message);
    for (const page of sockets.clients) {
      if (page.bufferedAmount > limits.stalledBytes) page.terminate();
      else if (!droppable.has(message.type) || page.bufferedAmount <= limits.slowBytes) page.send(text);
    }
  });
  return {
    close() {
      telling.unsubscribe();
      for (const page of sockets.clients) page.terminate();
      sockets.close();
    },
  };
}

async function answer(page: WebSocket, stage: Stage, data: RawData): Promise<void> {
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
      await stage.obey(command);
    }
    tell(page, { type: 'answer', to: ask, error: null });
  } catch (error) {
    tell(page, { type: 'answer', to: ask, error: sent(error) });
  }
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
  return Number.isInteger(ask) ? (ask as number) : 0;
}
