import { WayscribeError } from '../../shared/errors.ts';
import { eventSchema, type Header, type NewEvent, type SessionEvent } from '../../shared/session/events.ts';
import { NO_LINK, seal } from './chain.ts';
import { type OpenFile, openFile, type RecordingFile, recordingError } from './file.ts';

/** When something happened: wall clock in ms since 1970, monotonic clock in ms. */
export interface Stamp {
  readonly t: number;
  readonly m: number;
}

/** Where the recording ends: number and link of the last line that is wholly written, and its end. */
export interface Tail {
  readonly seq: number;
  readonly link: string;
  readonly size: number;
}

interface Entry {
  readonly event: SessionEvent;
  readonly durable: boolean;
  readonly resolve: (event: SessionEvent) => void;
  readonly reject: (error: WayscribeError) => void;
}

const SYNC_AT_LEAST_EVERY_MS = 1000;

/**
 * Appends numbered, chained events to one recording. Everything that waits is written at once, and synced
 * once if any of it must outlive a power cut. An event is handed back only when it is in the file, and on
 * the disk if `durable`; what cannot be written is rejected and leaves no trace in the file, in the
 * numbers or in the chain, so that later appends work as soon as the disk does.
 */
export class RecordingWriter {
  readonly path: string;
  readonly #file: RecordingFile;
  #tail: Tail;
  /** Something may stand in the file after the tail. */
  #trailing: boolean;
  #queue: Entry[] = [];
  #running: Promise<void> | null = null;
  #timer: NodeJS.Timeout | null = null;
  #syncDue = false;
  /** A failure of a sync in between, for which nobody waited. */
  #failure: unknown = null;
  #closed = false;

  constructor(path: string, file: RecordingFile, tail: Tail, trailing: boolean) {
    this.path = path;
    this.#file = file;
    this.#tail = tail;
    this.#trailing = trailing;
  }

  /**
   * Starts a new recording; the header is on the disk when it returns. Throws `recording.full` or
   * `recording.unwritable`, the latter also when the file exists.
   */
  static async create(path: string, header: Header, open: OpenFile = openFile): Promise<RecordingWriter> {
    let file: RecordingFile | null = null;
    try {
      file = await open(path, 'create');
      const { text, link } = seal(JSON.stringify(header), NO_LINK);
      const bytes = Buffer.from(`${text}\n`);
      await file.write(bytes, 0);
      await file.sync();
      return new RecordingWriter(path, file, { seq: 0, link, size: bytes.length }, false);
    } catch (error) {
      await file?.close().catch(() => {});
      throw recordingError(error, path);
    }
  }

  /** Number of the last event that is written. */
  get seq(): number {
    return this.#tail.seq;
  }

  /** Link of the last line that is written: with it, the whole file is known. */
  get link(): string {
    return this.#tail.link;
  }

  /**
   * Numbers and writes one event; events come back in the order in which they were given. `durable`: it
   * must outlive a power cut (everything but the stream of readings, which is synced once a second).
   * Rejects with `recording.full`, `recording.unwritable`, or `recording.invalid` for an event that no
   * reader would take.
   */
  append(event: NewEvent, stamp: Stamp, { durable }: { durable: boolean }): Promise<SessionEvent> {
    return new Promise((resolve, reject) => {
      if (this.#closed) throw new WayscribeError('recording.unwritable', this.path, 'is closed');
      const checked = eventSchema.safeParse({ seq: this.#tail.seq + 1, t: stamp.t, m: stamp.m, ...event });
      if (!checked.success) {
        const [issue] = checked.error.issues;
        throw new WayscribeError('recording.invalid', [event.type, ...issue!.path].join('.'), issue!.message);
      }
      this.#queue.push({ event: checked.data, durable, resolve, reject });
      this.#wake();
    });
  }

  /** Writes and syncs what waits, then lets go of the file. */
  async close(): Promise<void> {
    if (this.#closed) return;
    this.#closed = true;
    this.#syncDue = true;
    this.#wake();
    await this.#running;
    this.#cancelTimer();
    await this.#file.close();
    if (this.#failure !== null) throw recordingError(this.#failure, this.path);
  }

  #wake(): void {
    this.#running ??= this.#run();
  }

  async #run(): Promise<void> {
    while (this.#queue.length > 0 || this.#syncDue) {
      const batch = this.#queue;
      this.#queue = [];
      if (batch.length > 0) await this.#commit(batch);
      else await this.#syncInBetween();
    }
    // At once, not when the promise settles: whoever was answered last may append in between.
    this.#running = null;
  }

  async #commit(batch: readonly Entry[]): Promise<void> {
    const durable = this.#syncDue || batch.some((entry) => entry.durable);
    let { seq, link } = this.#tail;
    let text = '';
    const events = batch.map(({ event }) => {
      seq += 1;
      const numbered = { ...event, seq };
      const sealed = seal(JSON.stringify(numbered), link);
      link = sealed.link;
      text += `${sealed.text}\n`;
      return numbered;
    });
    const bytes = Buffer.from(text);
    const tail = { seq, link, size: this.#tail.size + bytes.length };
    try {
      await this.#write(bytes, durable);
    } catch (error) {
      await this.#cutBack();
      const told = recordingError(error, this.path);
      for (const entry of batch) entry.reject(told);
      return;
    }
    this.#tail = tail;
    batch.forEach((entry, k) => {
      entry.resolve(events[k]!);
    });
  }

  async #write(bytes: Uint8Array, durable: boolean): Promise<void> {
    if (this.#failure !== null && durable) {
      // Readings written earlier may not have reached the disk. Said once, with the next thing that matters.
      const failure = this.#failure;
      this.#failure = null;
      throw failure;
    }
    if (this.#trailing) {
      await this.#file.truncate(this.#tail.size);
      this.#trailing = false;
    }
    this.#trailing = true;
    await this.#file.write(bytes, this.#tail.size);
    if (durable) await this.#sync();
    else this.#startTimer();
    this.#trailing = false;
  }

  /** Takes away what a failed write left. If that fails too, the next write tries it again first. */
  async #cutBack(): Promise<void> {
    if (!this.#trailing) return;
    try {
      await this.#file.truncate(this.#tail.size);
      this.#trailing = false;
    } catch {
      this.#trailing = true;
    }
  }

  async #syncInBetween(): Promise<void> {
    try {
      await this.#sync();
    } catch (error) {
      this.#failure = error;
    }
  }

  async #sync(): Promise<void> {
    this.#syncDue = false;
    this.#cancelTimer();
    await this.#file.sync();
  }

  #startTimer(): void {
    this.#timer ??= setTimeout(() => {
      this.#syncDue = true;
      this.#wake();
    }, SYNC_AT_LEAST_EVERY_MS);
  }

  #cancelTimer(): void {
    if (this.#timer) clearTimeout(this.#timer);
    this.#timer = null;
  }
}
