import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import { WayscribeError } from '../../shared/errors.ts';
import type { Header } from '../../shared/session/events.ts';
import { replaceFile } from '../replace-file.ts';

const progressSchema = z.object({
  published: z.literal(1),
  since: z.number().describe('when publishing began; older recordings are not published'),
  recordings: z.record(
    z.string(),
    z.object({
      t: z.number().describe('when the recording began: another one of the same name is another one'),
      seq: z.number().int().describe('number of the last event that the broker has'),
      bytes: z.number().int().optional().describe('size of the file when nothing of it was left to publish'),
    }),
  ),
});
type Progress = z.infer<typeof progressSchema>;

/**
 * How far each recording is published: the file `published.json` in the folder of the recordings. With the recordings
 * themselves it is the queue: whatever is on record behind the last confirmed event still has to go out.
 */
export class PublishProgress {
  readonly #path: string;
  #progress: Progress;

  private constructor(path: string, progress: Progress) {
    this.#path = path;
    this.#progress = progress;
  }

  /**
   * What was published up to now; begins now when nothing ever was.
   * @throws WayscribeError `publish.broken` when the file says something else
   */
  static async open(folder: string, now: number): Promise<PublishProgress> {
    const path = join(folder, 'published.json');
    const text = await readFile(path, 'utf8').catch((error: NodeJS.ErrnoException) => {
      if (error.code === 'ENOENT') return null;
      throw broken(path, `cannot be read (${error.code})`);
    });
    if (text !== null) return new PublishProgress(path, parse(path, text));
    const begun = new PublishProgress(path, { published: 1, since: now, recordings: {} });
    await begun.#write();
    return begun;
  }

  /** Whether a recording is published at all. Invented metal belongs in no archive. */
  concerns({ t, simulated }: Pick<Header, 't' | 'simulated'>): boolean {
    return !simulated && t >= this.#progress.since;
  }

  /** Number of the last event of this recording that the broker has; 0 when it has none. */
  seqOf({ id, t }: Pick<Header, 'id' | 't'>): number {
    const known = this.#progress.recordings[id];
    return known?.t === t ? known.seq : 0;
  }

  /** Whether everything in a file of this size was published. */
  isSettled({ id, t }: Pick<Header, 'id' | 't'>, bytes: number): boolean {
    const known = this.#progress.recordings[id];
    return known?.t === t && known.bytes === bytes;
  }

  /** The broker has everything up to `seq`, and the whole file when its size is told. On disk when this returns. */
  async advance({ id, t }: Pick<Header, 'id' | 't'>, seq: number, bytes?: number): Promise<void> {
    const entry = { t, seq, ...(bytes !== undefined && { bytes }) };
    this.#progress = { ...this.#progress, recordings: { ...this.#progress.recordings, [id]: entry } };
    await this.#write();
  }

  async #write(): Promise<void> {
    await replaceFile(this.#path, `${JSON.stringify(this.#progress)}\n`);
  }
}

function parse(path: string, text: string): Progress {
  try {
    return progressSchema.parse(JSON.parse(text));
  } catch {
    throw broken(path, 'does not say what was published');
  }
}

function broken(path: string, what: string): WayscribeError {
  return new WayscribeError(
    'publish.broken',
    path,
    what,
    'put it aside under another name: publishing then begins anew with the surveys to come',
  );
}
