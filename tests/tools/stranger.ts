import { once } from 'node:events';
import { type IncomingHttpHeaders, request } from 'node:http';
import { WebSocket } from 'ws';

/** An address of the loopback network that counts as another computer: only 127.0.0.1 is this one (Linux). */
export const strangerAddress = '127.0.0.2';

export interface Answer {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly body: string;
}

/** Somebody who speaks HTTP and WebSocket as they like: any header, from any address. */
export class Stranger {
  readonly address: string;
  readonly port: number;
  cookie = '';

  constructor(port: number, address = strangerAddress) {
    this.port = port;
    this.address = address;
  }

  get origin(): string {
    return `http://${this.address}:${this.port}`;
  }

  ask(
    path: string,
    { method = 'GET', headers = {}, body = '' }: { method?: string; headers?: object; body?: string } = {},
  ): Promise<Answer> {
    const { address, port } = this;
    return new Promise((resolve, reject) => {
      const length = body === '' ? {} : { 'content-length': Buffer.byteLength(body) };
      const all = { ...(this.cookie && { cookie: this.cookie }), ...length, ...headers };
      request({ host: address, port, localAddress: address, path, method, headers: all }, (response) => {
        let text = '';
        response.setEncoding('utf8');
        response.on('data', (part) => {
          text += part;
        });
        response.on('end', () =>
          resolve({ status: response.statusCode ?? 0, headers: response.headers, body: text }),
        );
      })
        .on('error', reject)
        .end(body);
    });
  }

  /** Posts JSON as the daemon's own page would. */
  post(path: string, body: unknown, method = 'POST'): Promise<Answer> {
    const headers = { origin: this.origin, 'content-type': 'application/json' };
    return this.ask(path, { method, headers, body: JSON.stringify(body) });
  }

  /** A socket, with every message that came on it. */
  socket(headers: Record<string, string> = {}): SocketTalk {
    const { address, port } = this;
    const all = { ...(this.cookie && { cookie: this.cookie }), ...headers };
    return new SocketTalk(
      new WebSocket(`ws://${address}:${port}/ws`, { headers: all, localAddress: address }),
    );
  }
}

export class SocketTalk {
  readonly socket: WebSocket;
  readonly messages: { type: string; [field: string]: unknown }[] = [];
  /** Settles with the code with which the socket was closed, or the status with which it was refused. */
  readonly over: Promise<number>;
  readonly #watchers = new Set<() => void>();

  constructor(socket: WebSocket) {
    this.socket = socket;
    this.over = new Promise((resolve) => {
      socket.on('close', resolve);
      socket.on('unexpected-response', (_request, response) => {
        response.resume();
        resolve(response.statusCode ?? 0);
      });
    });
    socket.on('error', () => {});
    socket.on('message', (data) => {
      this.messages.push(JSON.parse(String(data)));
      for (const watch of [...this.#watchers]) watch();
    });
  }

  async opened(): Promise<this> {
    await once(this.socket, 'open');
    return this;
  }

  /** The first message of that type, waited for. */
  async first(type: string): Promise<Record<string, unknown>> {
    for (;;) {
      const found = this.messages.find((message) => message.type === type);
      if (found) return found;
      await new Promise<void>((resolve) => {
        const watch = () => {
          this.#watchers.delete(watch);
          resolve();
        };
        this.#watchers.add(watch);
      });
    }
  }

  send(message: unknown): void {
    this.socket.send(typeof message === 'string' ? message : JSON.stringify(message));
  }

  close(): void {
    this.socket.terminate();
  }
}
