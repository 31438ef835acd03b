import type { RecordingFile } from './file.ts';

const SYNC_AT_LEAST_EVERY_MS = 1000;

/**
 * A file that only grows, by whole pieces: a piece that cannot be written leaves nothing behind. What is
 * not synced at once is synced within a second.
 */
export class AppendFile {
  readonly #file: RecordingFile;
  #size: number;
  /** Something may stand in the file after `size`. */
  #trailing: boolean;
  #timer: NodeJS.Timeout | null = null;
  #syncing: Promise<void> = Promise.resolve();
  /** Failure of a sync for which nobody waited. */
  #failure: { error: unknown } | null = null;

  /** `trailing`: the file holds more than `size` bytes, which the first piece is to take away. */
  constructor(file: RecordingFile, size: number, trailing = false) {
    this.#file = file;
    this.#size = size;
    this.#trailing = trailing;
  }

  /** Adds one piece; when `durable` it is on the disk when this returns. One at a time. */
  async append(piece: Uint8Array, durable: boolean): Promise<void> {
    if (durable) this.#tellFailure();
    try {
      await this.#cutBack();
      this.#trailing = true;
      await this.#file.write(piece, this.#size);
      if (durable) await this.#sync();
    } catch (error) {
      // If this fails too, the next piece tries it again first.
      await this.#cutBack().catch(() => {});
      throw error;
    }
    this.#trailing = false;
    this.#size += piece.length;
    if (!durable) this.#timer ??= setTimeout(() => this.#syncUnasked(), SYNC_AT_LEAST_EVERY_MS);
  }

  /** Syncs and lets go of the file. */
  async close(): Promise<void> {
    await this.#syncing;
    try {
      await this.#sync();
    } finally {
      await this.#file.close();
    }
    this.#tellFailure();
  }

  async #cutBack(): Promise<void> {
    if (this.#trailing) await this.#file.truncate(this.#size);
    this.#trailing = false;
  }

  async #sync(): Promise<void> {
    if (this.#timer) clearTimeout(this.#timer);
    this.#timer = null;
    await this.#file.sync();
  }

  #syncUnasked(): void {
    this.#syncing = this.#sync().catch((error) => {
      this.#failure = { error };
    });
  }

  /** What was written before may not be on the disk. Said once, with the next piece that matters. */
  #tellFailure(): void {
    const failure = this.#failure;
    this.#failure = null;
    if (failure) throw failure.error;
  }
}
