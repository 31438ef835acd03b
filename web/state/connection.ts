import {
  type CommandInput,
  type FromPage,
  type SentError,
  type ToPage,
  toPageSchema,
} from '../../shared/messages.ts';

/** The socket to the daemon. It reopens for ever, with a delay that grows up to a few seconds. */
export interface Connection {
  /** Asks for something; the answer is the refusal, or null when it was done. */
  ask(command: CommandInput): Promise<SentError | null>;
  /**
   * The device woke up or found its network again. A socket that is waited for is opened at once; one that only seems
   * open is found out by asking for what was `missed`, and replaced.
   */
  wake(missed: CommandInput): void;
}

export interface Listener {
  open(): void;
  message(message: ToPage): void;
  lost(): void;
}

const delaysMs = [250, 500, 1000, 2000, 4000];

/** How long the daemon may take to answer whoever looks in after a sleep, ms. */
const patienceMs = 2500;

const away: SentError = {
  code: 'command.refused',
  place: '',
  message: 'the tool cannot be reached',
  remedy: 'nothing was sent; wait until the connection is back',
};

const garbled: SentError = {
  code: 'command.refused',
  place: '',
  message: 'the connection was lost before the answer came',
  remedy: 'look whether it was done before you ask again',
};

export function connect(url: string, listener: Listener): Connection {
  let socket: WebSocket | null = null;
  let asked = 0;
  let failures = 0;
  const waiting = new Map<number, (error: SentError | null) => void>();
  let retry: ReturnType<typeof setTimeout> | undefined;

  const open = () => {
    clearTimeout(retry);
    const opened = new WebSocket(url);
    socket = opened;
    opened.addEventListener('open', () => {
      failures = 0;
      listener.open();
    });
    opened.addEventListener('message', ({ data }) => {
      const message = read(data);
      if (!message || socket !== opened) return;
      if (message.type === 'answer') {
        waiting.get(message.to)?.(message.error);
        waiting.delete(message.to);
      }
      listener.message(message);
    });
    opened.addEventListener('close', () => lost(opened));
  };
  const lost = (closed: WebSocket) => {
    if (socket !== closed) return;
    socket = null;
    for (const answer of waiting.values()) answer(garbled);
    waiting.clear();
    listener.lost();
    retry = setTimeout(open, delaysMs[Math.min(failures++, delaysMs.length - 1)]);
  };
  const ask = (command: CommandInput): Promise<SentError | null> => {
    if (socket?.readyState !== WebSocket.OPEN) return Promise.resolve(away);
    const to = asked++;
    socket.send(JSON.stringify({ ask: to, command } satisfies FromPage));
    return new Promise((answer) => waiting.set(to, answer));
  };
  open();

  return {
    ask,
    wake(missed) {
      if (!socket) return open();
      if (socket.readyState !== WebSocket.OPEN) return;
      const probed = socket;
      const silent = setTimeout(() => {
        lost(probed);
        probed.close();
      }, patienceMs);
      void ask(missed).then(() => clearTimeout(silent));
    },
  };
}

/** A message that is not as agreed is dropped: the page never shows what it doesn't understand. */
function read(data: unknown): ToPage | null {
  if (typeof data !== 'string') return null;
  try {
    const parsed = toPageSchema.safeParse(JSON.parse(data));
    return parsed.success ? parsed.data : null;
  } catch {
    return null;
  }
}
