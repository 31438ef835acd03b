/** The side of the network, as publishing needs it. */
export interface Broker {
  /** Settles when the broker has confirmed it; waits through any outage. Rejects only when closed. */
  publish(topic: string, payload: string, how: { readonly retain: boolean }): Promise<void>;
  close(): Promise<void>;
}

/** Connects to an MQTT broker, for ever again. `said` hears, once each time, that it is away or back. */
export async function connectBroker(address: string, said: (text: string) => void): Promise<Broker> {
  const { connect } = await import('mqtt');
  const client = connect(address, { resubscribe: false });
  const name = new URL(address).host;
  let is: 'unknown' | 'there' | 'away' = 'unknown';
  client.on('connect', () => {
    said(is === 'away' ? `The broker at ${name} is back.` : `Takes and results go to the broker at ${name}.`);
    is = 'there';
  });
  const away = (why: string) => {
    if (is === 'away') return;
    is = 'away';
    said(`The broker at ${name} is away${why}; what is taken meanwhile is published when it is back.`);
  };
  client.on('error', (error: Error & { code?: unknown }) => away(` (${error.message || error.code})`));
  client.on('offline', () => away(''));
  // What waits for a broker that is away would else wait for ever.
  let giveUp = (_: Error) => {};
  const closed = new Promise<never>((_, reject) => {
    giveUp = reject;
  });
  closed.catch(() => {});
  return {
    async publish(topic, payload, { retain }) {
      const confirmed = client.publishAsync(topic, payload, { qos: 1, retain });
      confirmed.catch(() => {});
      await Promise.race([confirmed, closed]);
    },
    async close() {
      giveUp(new Error('the connection to the broker is closed'));
      await client.endAsync(true);
    },
  };
}
