import type { Stamp } from '../../shared/session/events.ts';

export interface CutListener {
  /** The bytes of one frame without its delimiter, one character a byte. */
  frame(text: string, stamp: Stamp): void;
  /** Bytes that can be no frame. */
  discarded(text: string, why: string, stamp: Stamp): void;
}

/** Cuts the bytes of one opening of a port into frames. */
export interface Cutter {
  push(bytes: Buffer, stamp: Stamp): void;
  /** The line has ended: what is held is no frame any more. */
  end(stamp: Stamp): void;
}
