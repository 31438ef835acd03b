import { readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterEach, expect, test } from 'vitest';
import type { Header, SessionEvent } from '../../shared/session/events.ts';
import { sampleHeader, take } from '../../tests/tools/sample-recording.ts';
import { testFolder } from '../../tests/tools/test-folder.ts';
import { RecordingStore } from '../recording/store.ts';
import { RecordingWriter } from '../recording/writer.ts';
import type { Broker } from './broker.ts';
import { PublishProgress } from './progress.ts';
import { Publisher } from './publisher.ts';

const began = sampleHeader.t - 1;

const writers: RecordingWriter[] = [];
afterEach(async () => {
  for (const writer of writers.splice(0)) await writer.close();
});

/** A broker in memory that confirms so many messages, and then neither takes nor confirms any. */
class BrokerInMemory implements Broker {
  readonly ids: string[] = [];
  readonly #confirms: number;
  #giveUp: ((error: Error) => void) | null = null;
  #closed = false;

  constructor(confirms = Number.POSITIVE_INFINITY) {
    this.#confirms = confirms;
  }

  async publish(_topic: string, payload: string): Promise<void> {
    if (this.#closed) throw new Error('closed');
    if (this.ids.length >= this.#confirms) {
      return new Promise((_, reject) => {
        this.#giveUp = reject;
      });
    }
    this.ids.push(JSON.parse(payload).id);
  }

  async close(): Promise<void> {
    this.#closed = true;
    this.#giveUp?.(new Error('closed'));
  }
}

interface Running {
  readonly publisher: Publisher;
  readonly broker: BrokerInMemory;
  readonly said: string[];
}

async function running(folder: string, confirms?: number): Promise<Running> {
  const broker = new BrokerInMemory(confirms);
  const said: string[] = [];
  const store = await RecordingStore.open(folder);
  const progress = await PublishProgress.open(folder, began);
  const publisher = new Publisher({
    store,
    progress,
    broker,
    topic: 'shop',
    bench: 'b',
    said: (text) => said.push(text),
  });
  await publisher.catchUp();
  return { publisher, broker, said };
}

async function begin(folder: string, header: Header = sampleHeader): Promise<RecordingWriter> {
  const writer = await RecordingWriter.create(join(folder, `${header.id}.jsonl`), header);
  writers.push(writer);
  return writer;
}

const written = (writer: RecordingWriter, k: number): Promise<SessionEvent> =>
  writer.append(take(k, k, 1, 1), { t: sampleHeader.t + k, m: k }, { durable: true });

const seqs = (ids: readonly string[]) => ids.map((id) => Number(id.split('/').at(-1)));

test('however often the broker stops confirming, each message goes out once and in order', async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.array(fc.record({ takes: fc.nat(3), confirms: fc.nat(4) }), { minLength: 1, maxLength: 4 }),
      async (spells) => {
        const folder = testFolder();
        const writer = await begin(folder);
        const out: number[] = [];
        let takes = 0;
        for (const spell of spells) {
          const now = await running(folder, spell.confirms);
          for (let k = 0; k < spell.takes; k += 1) {
            now.publisher.look('sample', [await written(writer, takes % 6)]);
            takes += 1;
          }
          await now.publisher.close();
          out.push(...seqs(now.broker.ids));
        }
        const last = await running(folder);
        await until(() => out.length + last.broker.ids.length === takes);
        await last.publisher.close();
        expect([...out, ...seqs(last.broker.ids)]).toEqual(Array.from({ length: takes }, (_, k) => k + 1));
      },
    ),
    { numRuns: 25 },
  );
});

test('recordings from before, invented metal, and recordings from elsewhere are not published', async () => {
  const folder = testFolder();
  const older = await begin(folder, { ...sampleHeader, id: 'older', t: began - 1 });
  const invented = await begin(folder, {
    ...sampleHeader,
    id: 'invented',
    simulated: { scenario: 'worn', truthUm: {} },
  });
  const now = await running(folder);
  now.publisher.look('older', [await written(older, 0)]);
  now.publisher.look('invented', [await written(invented, 0)]);
  now.publisher.look('elsewhere', [{ ...take(0, 1, 1, 1), seq: 1, t: 0, m: 0 } as SessionEvent]);
  await now.publisher.close();
  expect(now.broker.ids).toEqual([]);
  expect(now.said).toEqual([]);
});

test('what is told a second time goes out once', async () => {
  const folder = testFolder();
  const writer = await begin(folder);
  const event = await written(writer, 0);
  const now = await running(folder);
  for (let k = 0; k < 3; k += 1) now.publisher.look('sample', [event]);
  await until(() => now.broker.ids.length > 0);
  await now.publisher.close();
  expect(seqs(now.broker.ids)).toEqual([1]);
});

test('a new recording of a name that was used before is another one', async () => {
  const folder = testFolder();
  for (const t of [sampleHeader.t, sampleHeader.t + 1]) {
    await rm(join(folder, 'sample.jsonl'), { force: true });
    const writer = await begin(folder, { ...sampleHeader, t });
    await written(writer, 0);
    const now = await running(folder);
    await until(() => now.broker.ids.length === 1);
    await now.publisher.close();
    expect(now.broker.ids).toEqual([`b/sample/${t}/1`]);
  }
});

test('a file that does not say what was published is left alone', async () => {
  const folder = testFolder();
  const path = join(folder, 'published.json');
  await writeFile(path, '{"published":1');
  await expect(PublishProgress.open(folder, began)).rejects.toMatchObject({ code: 'publish.broken' });
  expect(await readFile(path, 'utf8')).toBe('{"published":1');
});

/** Passes turns of the event loop until it holds; the time limit of the test is the only other end. */
async function until(holds: () => boolean): Promise<void> {
  while (!holds()) await new Promise((resolve) => setImmediate(resolve));
}
