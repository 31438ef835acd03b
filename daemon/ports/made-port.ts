import type { Stamp } from '../../shared/session/events.ts';
import type { OpenPort, PortListener, PortMaker } from './port.ts';

/**
 * A port that is fed from inside: the simulated instrument and the replay speak through it.
 * It is always there, and can be open once at a time.
 */
export class MadePort implements PortMaker {
  readonly path: string;
  readonly #heard: (bytes: string) => void;
  #listener: PortListener | null = null;

  /** @param heard what the daemon writes to the port */
  constructor(path: string, heard: (bytes: string) => void = () => {}) {
    this.path = path;
    this.#heard = heard;
  }

  async open(_line: unknown, listener: PortListener): Promise<OpenPort> {
    this.#listener = listener;
    return {
      write: (bytes) => this.#heard(bytes),
      close: async () => {
        this.#listener = null;
        listener.closed(null);
      },
    };
  }

  /** Bytes that arrive at the daemon, one character a byte; lost when nobody has the port open. */
  feed(bytes: string, stamp: Stamp): void {
    this.#listener?.data(Buffer.from(bytes, 'latin1'), stamp);
  }
}
