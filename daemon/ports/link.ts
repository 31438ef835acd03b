import { isWayscribeError, WayscribeError } from '../../shared/errors.ts';
import type { LinkState } from '../../shared/messages.ts';
import type { Stamp } from '../../shared/session/events.ts';
import { type LineSettings, type OpenPort, type PortMaker, stampNow } from './port.ts';

/** Delays between two tries to open: from the first to the last, longer each time. */
export const reopenDelays = { firstMs: 100, factor: 1.6, lastMs: 1000 };

export interface LinkListener {
  /** A new opening: whatever was held of the last one is void. */
  opened(stamp: Stamp): void;
  data(bytes: Buffer, stamp: Stamp): void;
  closed(stamp: Stamp): void;
  state(state: LinkState, error: WayscribeError | null): void;
}

/**
 * Keeps a port open for ever: `absent` while it is not there, `opening`, `open`, and `faulted` when it is there
 * but can't be opened. One timer, one port object an opening, no giving up.
 */
export class PortLink {
  readonly #maker: PortMaker;
  readonly #line: LineSettings;
  readonly #listener: LinkListener;
  #port: OpenPort | null = null;
  #timer: NodeJS.Timeout | null = null;
  #delayMs = reopenDelays.firstMs;
  #stopped = true;

  constructor(maker: PortMaker, line: LineSettings, listener: LinkListener) {
    this.#maker = maker;
    this.#line = line;
    this.#listener = listener;
  }

  /** Begins to keep the port open; returns after the first try, however it went. */
  async start(): Promise<void> {
    if (!this.#stopped) return;
    this.#stopped = false;
    await this.#open();
  }

  async stop(): Promise<void> {
    this.#stopped = true;
    if (this.#timer) clearTimeout(this.#timer);
    this.#timer = null;
    const port = this.#port;
    this.#port = null;
    await port?.close();
  }

  /** Sends bytes when the port is open; else they are dropped, since an old request is worth nothing. */
  write(bytes: string): void {
    this.#port?.write(bytes);
  }

  async #open(): Promise<void> {
    this.#listener.state('opening', null);
    // `closed` may come before `open` has resolved: an adapter pulled out in that moment.
    let gone = false;
    try {
      const port = await this.#maker.open(this.#line, {
        data: (bytes, stamp) => {
          if (!this.#stopped && !gone) this.#listener.data(bytes, stamp);
        },
        closed: (error) => {
          if (gone) return;
          gone = true;
          this.#port = null;
          this.#lost(
            new WayscribeError(
              'port.absent',
              this.#maker.path,
              error ? 'the cable was pulled or the adapter is gone' : 'the port was closed',
              'plug it in again; it is waited for',
            ),
          );
        },
      });
      if (this.#stopped) return void (await port.close());
      if (gone) return;
      this.#port = port;
      this.#delayMs = reopenDelays.firstMs;
      this.#listener.opened(stampNow());
      this.#listener.state('open', null);
    } catch (error) {
      if (gone) return;
      this.#failed(
        isWayscribeError(error)
          ? error
          : new WayscribeError('port.failed', this.#maker.path, String(error), 'it is tried again by itself'),
      );
    }
  }

  #lost(error: WayscribeError): void {
    if (this.#stopped) return;
    this.#listener.closed(stampNow());
    this.#delayMs = reopenDelays.firstMs;
    this.#failed(error);
  }

  #failed(error: WayscribeError): void {
    if (this.#stopped) return;
    this.#listener.state(error.code === 'port.absent' ? 'absent' : 'faulted', error);
    this.#timer = setTimeout(() => void this.#open(), this.#delayMs);
    this.#delayMs = Math.min(this.#delayMs * reopenDelays.factor, reopenDelays.lastMs);
  }
}
