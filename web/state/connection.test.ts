import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { connect } from './connection.ts';

/** A socket as the browser gives it, whose far side the test plays. */
class FakeSocket extends EventTarget {
  static readonly OPEN = 1;
  static all: FakeSocket[] = [];
  readyState = 0;
  readonly sent: { ask: number; command: { do: string } }[] = [];

  constructor() {
    super();
    FakeSocket.all.push(this);
  }

  accept(): void {
    this.readyState = 1;
    this.dispatchEvent(new Event('open'));
  }

  send(text: string): void {
    this.sent.push(JSON.parse(text));
  }

  say(message: unknown): void {
    this.dispatchEvent(Object.assign(new Event('message'), { data: JSON.stringify(message) }));
  }

  close(): void {
    this.readyState = 3;
    this.dispatchEvent(new Event('close'));
  }
}

const missed = { do: 'since', seq: 7 } as const;
const heard: string[] = [];
const listener = {
  open: () => void heard.push('open'),
  message: ({ type }: { type: string }) => void heard.push(type),
  lost: () => void heard.push('lost'),
};
const socket = (k: number) => FakeSocket.all[k]!;

beforeEach(() => {
  vi.useFakeTimers();
  vi.stubGlobal('WebSocket', FakeSocket);
  FakeSocket.all = [];
  heard.length = 0;
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

test('after a sleep a living socket is asked for what was missed, and kept', async () => {
  const connection = connect('ws://x', listener);
  socket(0).accept();
  connection.wake(missed);
  expect(socket(0).sent).toEqual([{ ask: 0, command: missed }]);
  socket(0).say({ type: 'answer', to: 0, error: null });
  await vi.advanceTimersByTimeAsync(60_000);
  expect(FakeSocket.all).toHaveLength(1);
});

test('a socket that only seems open is replaced, and what it says afterwards is not heard', async () => {
  const connection = connect('ws://x', listener);
  socket(0).accept();
  const question = connection.ask({ do: 'finish' });
  connection.wake(missed);
  await vi.advanceTimersByTimeAsync(5_000);
  expect(await question).toMatchObject({ message: 'the connection was lost before the answer came' });
  expect(FakeSocket.all).toHaveLength(2);
  socket(1).accept();
  socket(0).say({ type: 'simulated', simulated: null });
  socket(0).dispatchEvent(new Event('close'));
  expect(heard).toEqual(['open', 'lost', 'open']);
  await vi.advanceTimersByTimeAsync(60_000);
  expect(FakeSocket.all).toHaveLength(2);
});

test('one that is waited for is opened at once, and only once', async () => {
  const connection = connect('ws://x', listener);
  for (let k = 0; k < 5; k += 1) {
    socket(k).close();
    await vi.advanceTimersByTimeAsync(4_000);
  }
  socket(5).close();
  expect(FakeSocket.all).toHaveLength(6);
  connection.wake(missed);
  expect(FakeSocket.all).toHaveLength(7);
  connection.wake(missed);
  socket(6).accept();
  await vi.advanceTimersByTimeAsync(60_000);
  expect(FakeSocket.all).toHaveLength(7);
});
