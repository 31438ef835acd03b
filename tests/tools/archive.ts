import { connectAsync, type MqttClient } from 'mqtt';

export interface Received {
  readonly topic: string;
  readonly text: string;
  readonly retained: boolean;
}

/** A receiver at a broker: every message as it came, and each one once, as its id says. */
export class Archive {
  readonly received: Received[] = [];
  readonly #client: MqttClient;
  readonly #watchers = new Set<() => void>();

  private constructor(client: MqttClient) {
    this.#client = client;
    client.on('message', (topic, payload, { retain }) => {
      this.received.push({ topic, text: String(payload), retained: retain });
      for (const watch of [...this.#watchers]) watch();
    });
    client.on('error', () => {});
  }

  /** Subscribes; under a name the broker keeps for it what comes while it is away. */
  static async open(address: string, topic: string, name?: string): Promise<Archive> {
    const client = await connectAsync(address, {
      reconnectPeriod: 50,
      resubscribe: false,
      ...(name !== undefined && { clientId: name, clean: false }),
    });
    const archive = new Archive(client);
    await client.subscribeAsync(topic, { qos: 1 });
    return archive;
  }

  /** Every message once, in the order of its first coming. */
  get messages(): Record<string, unknown>[] {
    const each = new Map<unknown, Record<string, unknown>>();
    for (const { text } of this.received) {
      const message = JSON.parse(text);
      if (!each.has(message.id)) each.set(message.id, message);
    }
    return [...each.values()];
  }

  /** Settles as soon as a message has made it true. */
  async until(holds: (messages: Record<string, unknown>[]) => boolean): Promise<void> {
    if (holds(this.messages)) return;
    await new Promise<void>((resolve) => {
      const watch = () => {
        if (!holds(this.messages)) return;
        this.#watchers.delete(watch);
        resolve();
      };
      this.#watchers.add(watch);
    });
  }

  async close(): Promise<void> {
    await this.#client.endAsync(true);
  }
}
