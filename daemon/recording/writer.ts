import { rm } from 'node:fs/promises';
import { WayscribeError } from '../../shared/errors.ts';
import type { Header, NewEvent, SessionEvent, Stamp } from '../../shared/session/events.ts';
import { AppendFile } from './append-file.ts';
import { NO_LINK, seal } from './chain.ts';
import { type OpenFile, openFile, type RecordingFile, recordingError } from './file.ts';
import { parseEvent } from './plain-reading.ts';

interface Entry {
  readonly event: SessionEvent;
  readonly durable: boolean;
  readonly resolve: (event: SessionEvent) => void;
  readonly reject: (error: WayscribeError) => void;
}

/**
 * Appends numbered, chained events to one recording. Everything that waits is written at once, and synced
 * once if any of it must outlive a power cut. An event is handed back only when it is in the file, and on
 * the disk if `durable`; what cannot be written is rejected and leaves no trace in the file, in the
 * numbers or in the chain, so that later appends work as soon as the disk does.
 */
export class RecordingWriter {
  readonly path: string;
  readonly #file: AppendFile;
  #seq: number;
  #link: string;
  #queue: Entry[] = [];
  #running: Promise<void> | null = null;
  #closed = false;

  /** Goes on after the event numbered `seq` on a line with `link`. */
  constructor(path: string, file: AppendFile, seq: number, link: string) {
    this.path = path;
    this.#file = file;
    this.#seq = seq;
    this.#link = link;
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
      const lines = new AppendFile(file, 0);
      await lines.append(Buffer.from(`${text}\n`), true);
      return new RecordingWriter(path, lines, 0, link);
    } catch (error) {
      await file?.close().catch(() => {});
      if (file) await rm(path, { force: true }).catch(() => {});
      throw recordingError(error, path);
    }
  }

  /** Number of the last event that is written. */
  get seq(): number {
    return this.#seq;
  }

  /** Link of the last line that is written: with it, the whole file is known. */
  get link(): string {
    return this.#link;
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
      const checked = parseEvent({ seq: this.#seq + 1, t: stamp.t, m: stamp.m, ...event });
      if (!checked.success) {
        const [issue] = checked.error.issues;
        throw new WayscribeError('recording.invalid', [event.type, ...issue!.path].join('.'), issue!.message);
      }
      this.#queue.push({ event: checked.data, durable, resolve, reject });
      this.#running ??= this.#run();
    });
  }

  /** Writes and syncs what waits, then lets go of the file. */
  async close(): Promise<void> {
    if (this.#closed) return;
    this.#closed = true;
    await this.#running;
    try {
      await this.#file.close();
    } catch (error) {
      throw recordingError(error, this.path);
    }
  }

  async #run(): Promise<void> {
    while (this.#queue.length > 0) {
      const batch = this.#queue;
      this.#queue = [];
      await this.#commit(batch);
    }
    // At once, not when the promise settles: whoever was answered last may append in between.
    this.#running = null;
  }

  async #commit(batch: readonly Entry[]): Promise<void> {
    let seq = this.#seq;
    let link = this.#link;
    let lines = '';
    const events = batch.map(({ event }) => {
      seq += 1;
      // It was made for this recording by `append`, and its number is only known now.
      event.seq = seq;
      const sealed = seal(JSON.stringify(event), link);
      link = sealed.link;
      lines += `${sealed.text}\n`;
      return event;
    });
    try {
      await this.#file.append(
        Buffer.from(lines),
        batch.some(({ durable }) => durable),
      );
    } catch (error) {
      const told = recordingError(error, this.path);
      for (const { reject } of batch) reject(told);
      return;
    }
    this.#seq = seq;
    this.#link = link;
    batch.forEach(({ resolve }, k) => {
      resolve(events[k]!);
    });
  }
}
