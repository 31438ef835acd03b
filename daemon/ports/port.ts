import type { Profile } from '../../protocols/profile.ts';
import type { Stamp } from '../../shared/session/events.ts';

/** Now, on both clocks. */
export function stampNow(): Stamp {
  return { t: Date.now(), m: performance.now() };
}

export type LineSettings = Profile['line'];

/** What a port tells whoever opened it. */
export interface PortListener {
  data(bytes: Buffer, stamp: Stamp): void;
  /** The port is gone, by itself (`error`) or because it was closed (null). Told once. */
  closed(error: Error | null): void;
}

/** An open port. It is used once: after it has closed, another one is opened. */
export interface OpenPort {
  write(bytes: string): void;
  close(): Promise<void>;
}

/**
 * Makes ports of one kind: real or simulated. Nobody else knows which it is.
 * `open` rejects with a WayscribeError `port.absent`, `port.busy`, `port.denied` or `port.failed`.
 */
export interface PortMaker {
  readonly path: string;
  open(line: LineSettings, listener: PortListener): Promise<OpenPort>;
}
