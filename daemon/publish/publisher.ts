import { stat } from 'node:fs/promises';
import { isWayscribeError } from '../../shared/errors.ts';
import type { Header, SessionEvent } from '../../shared/session/events.ts';
import { readRecording } from '../recording/reader.ts';
import type { RecordingStore } from '../recording/store.ts';
import { Turns } from '../session/turns.ts';
import type { Broker } from './broker.ts';
import type { PublishProgress } from './progress.ts';
import { isTold, type Published, resultTold, toldOf } from './published.ts';

export interface PublishTools {
  readonly store: RecordingStore;
  readonly progress: PublishProgress;
  readonly broker: Broker;
  /** What topics begin with. */
  readonly topic: string;
  readonly bench: string;
  /** Hears of a recording that can't be published. */
  said(text: string): void;
}

/**
 * Publishes what is on record, one message after the other, each until the broker has confirmed it. The recordings are
 * the queue: nothing is lost while the broker or this program is away, and what is sent a second time has the same id.
 */
export class Publisher {
  readonly #tools: PublishTools;
  readonly #turns = new Turns();
  /** Recordings that were read since the program began, and whether they are published at all. */
  readonly #known = new Map<string, { readonly header: Header; readonly concerns: boolean }>();
  #closed = false;

  constructor(tools: PublishTools) {
    this.#tools = tools;
  }

  /** Publishes what was left over from before. */
  async catchUp(): Promise<void> {
    const { recordings } = await this.#tools.store.list();
    for (const recording of recordings.toReversed()) {
      this.#inTurn(recording.id, async () => {
        const { size } = await stat(await this.#tools.store.find(recording.id));
        if (!this.#tools.progress.isSettled(recording, size)) await this.#whole(recording.id);
      });
    }
  }

  /** Something came on record, or is told once more. */
  look(id: string, events: readonly SessionEvent[]): void {
    if (events.some(isTold)) this.#inTurn(id, () => this.#news(id, events));
  }

  async close(): Promise<void> {
    this.#closed = true;
    await this.#tools.broker.close();
    await this.#turns.idle();
  }

  #inTurn(id: string, publish: () => Promise<void>): void {
    this.#turns
      .take(async () => {
        if (!this.#closed) await publish();
      })
      .catch((error: unknown) => {
        // Next time it is read from its file, so that what failed now is not passed over.
        this.#known.delete(id);
        // A file may be gone since.
        if (this.#closed || isWayscribeError(error, 'recording.notFound')) return;
        this.#tools.said(`${id} is not published: ${isWayscribeError(error) ? error.message : error}`);
      });
  }

  async #news(id: string, events: readonly SessionEvent[]): Promise<void> {
    const known = this.#known.get(id);
    if (!known) return this.#whole(id);
    if (known.concerns) await this.#publish(known.header, events);
  }

  /** Everything in a file that the broker does not have yet. */
  async #whole(id: string): Promise<void> {
    const { store, progress } = this.#tools;
    const path = await store.find(id);
    const { size } = await stat(path);
    const { header, events } = await readRecording(path, { skipReadings: true });
    const concerns = progress.concerns(header);
    this.#known.set(id, { header, concerns });
    if (!concerns) return;
    await this.#publish(header, events);
    await progress.advance(header, progress.seqOf(header), size);
  }

  async #publish(header: Header, events: readonly SessionEvent[]): Promise<void> {
    const { broker, progress, topic, bench } = this.#tools;
    for (const event of events) {
      if (!isTold(event) || event.seq <= progress.seqOf(header)) continue;
      const { kind, payload } =
        event.type === 'end' ? await this.#result(header, event) : toldOf(bench, header, event);
      const retain = kind === 'result';
      await broker.publish(`${topic}/${bench}/${kind}`, JSON.stringify(payload), { retain });
      await progress.advance(header, event.seq);
    }
  }

  async #result(header: Header, end: Parameters<typeof resultTold>[2]): Promise<Published> {
    const path = await this.#tools.store.find(header.id);
    const { events } = await readRecording(path, { skipReadings: true });
    return resultTold(this.#tools.bench, header, end, events);
  }
}
