import type { LinkState, SentError } from '../../shared/messages.ts';

/** What comes from a port that is listened to. */
export interface Heard {
  bytes(bytes: Buffer): void;
  link(
    state: LinkState,
    error: SentError | null,
    heard?: { readonly silent: boolean; readonly unread: boolean },
  ): void;
}
