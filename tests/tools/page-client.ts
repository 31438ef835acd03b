import { once } from 'node:events';
import { WebSocket } from 'ws';
import { type CommandInput, type SentError, type ToPage, toPageSchema } from '../../shared/messages.ts';
import type { Header, SessionEvent } from '../../shared/session/events.ts';
import { fold, type Session } from '../../shared/session/fold.ts';

/** What has not come by then does not come. */
const longestMs = 100_000;

/** A page without a screen: speaks to a real daemon as the page does, and folds what it is told. */
export class PageClient {
  messages: ToPage[] = [];
  header: Header | null = null;
  events: SessionEvent[] = [];
  readonly #socket: WebSocket;
  readonly #waiting = new Map<number, (error: SentError | null) => void>();
  readonly #watchers = new Set<() => void>();
  #asked = 0;

  private constructor(socket: WebSocket) {
    this.#socket = socket;
    socket.on('message', (data) => this.#told(toPageSchema.parse(JSON.parse(String(data)))));
    socket.on('error', () => {});
  }

  static async open(url: string): Promise<PageClient> {
    const address = url.replace(/^http/, 'ws').replace('localhost', '127.0.0.1');
    const client = new PageClient(new WebSocket(`${address}ws`));
    await once(client.#socket, 'open');
    await client.until(() => client.messages.some(({ type }) => type === 'hello'));
    return client;
  }

  get session(): Session | null {
    return this.header && fold(this.header, this.events);
  }

  /** The last message of that kind. */
  last<T extends ToPage['type']>(type: T): Extract<ToPage, { type: T }> | undefined {
    return this.messages.findLast((message) => message.type === type) as
      | Extract<ToPage, { type: T }>
      | undefined;
  }

  /** Asks, and gives back the error that came for an answer; null when it was done. */
  async ask(command: CommandInput): Promise<SentError | null> {
    this.#asked += 1;
    const ask = this.#asked;
    const answer = new Promise<SentError | null>((resolve) => this.#waiting.set(ask, resolve));
    this.#socket.send(JSON.stringify({ ask, command }));
    return answer;
  }

  /** Settles as soon as a message has made it true; says what it waits for when that takes longer than anything may. */
  async until(holds: () => boolean): Promise<void> {
    if (holds()) return;
    let watch = () => {};
    let late: NodeJS.Timeout | undefined;
    try {
      await new Promise<void>((resolve, reject) => {
        watch = () => void (holds() && resolve());
        late = setTimeout(() => reject(new Error(`waited in vain until ${holds}`)), longestMs);
        this.#watchers.add(watch);
      });
    } finally {
      clearTimeout(late);
      this.#watchers.delete(watch);
    }
  }

  /** Settles when the socket is gone. */
  async gone(): Promise<void> {
    if (this.#socket.readyState !== WebSocket.CLOSED) await once(this.#socket, 'close');
  }

  close(): void {
    this.#socket.terminate();
  }

  #told(message: ToPage): void {
    this.messages.push(message);
    if (message.type === 'hello') {
      this.header = message.session?.header ?? null;
      this.events = [...(message.session?.events ?? [])];
    }
    if (message.type === 'events') this.events.push(...message.events);
    if (message.type === 'answer') {
      this.#waiting.get(message.to)?.(message.error);
      this.#waiting.delete(message.to);
    }
    for (const watch of [...this.#watchers]) watch();
  }
}
