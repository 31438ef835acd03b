import type { LinkState, SentError } from '../../shared/messages.ts';

/** What comes from a port that is listened to. */
export interface Heard {
  bytes(bytes: Buffer): void;
  link(state: LinkState, error: SentError | null, silent?: boolean): void;
}
