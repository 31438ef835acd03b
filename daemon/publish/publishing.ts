import type { RecordingStore } from '../recording/store.ts';
import type { Stage } from '../session/stage.ts';
import { connectBroker } from './broker.ts';
import { PublishProgress } from './progress.ts';
import { Publisher } from './publisher.ts';

export interface PublishSettings {
  /** Address of the broker. */
  readonly broker: string;
  readonly topic: string;
  readonly bench: string;
}

/**
 * Publishes everything that comes on record, what was left over first.
 * @throws WayscribeError `publish.broken` when it is not known what was published before
 */
export async function startPublishing(
  { broker: address, topic, bench }: PublishSettings,
  store: RecordingStore,
  stage: Stage,
): Promise<{ close(): Promise<void> }> {
  const said = (text: string) => console.error(text);
  const progress = await PublishProgress.open(store.folder, Date.now());
  const broker = await connectBroker(address, said);
  const publisher = new Publisher({ store, progress, broker, topic, bench, said });
  const looking = stage.messages$.subscribe((message) => {
    if (message.type === 'events') publisher.look(message.id, message.events);
  });
  await publisher.catchUp();
  return {
    async close() {
      looking.unsubscribe();
      await publisher.close();
    },
  };
}
