import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { WayscribeError } from '../../shared/errors.ts';
import { PortLink, reopenDelays } from './link.ts';
import type { PortListener, PortMaker } from './port.ts';

const line = { baudRate: 9600, dataBits: 8, parity: 'none', stopBits: 1 } as const;

/** A port that is there or not, as the test says. */
class FakePort implements PortMaker {
  readonly path = '/dev/fake';
  readonly openedAt: number[] = [];
  failure: WayscribeError | null = null;
  listener: PortListener | null = null;
  closes = 0;

  async open(_line: unknown, listener: PortListener) {
    this.openedAt.push(performance.now());
    if (this.failure) throw this.failure;
    this.listener = listener;
    return {
      write: () => {},
      close: async () => {
        this.closes += 1;
        listener.closed(null);
      },
    };
  }
}

function linkTo(port: FakePort) {
  const seen: string[] = [];
  const link = new PortLink(port, line, {
    opened: () => seen.push('opened'),
    data: (bytes) => seen.push(`data ${bytes.toString('latin1')}`),
    closed: () => seen.push('closed'),
    state: (state, error) => seen.push(error ? `${state} (${error.code})` : state),
  });
  return { link, seen };
}

const absent = new WayscribeError('port.absent', '/dev/fake', 'the port is not there');
const busy = new WayscribeError('port.busy', '/dev/fake', 'another program holds the port');
const stamp = { t: 0, m: 0 };

describe('a link to a port', () => {
  beforeEach(() => {
    vi.useFakeTimers();
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  test('waits for a port that is not there, for ever, and never longer than the cap between two tries', async () => {
    const port = new FakePort();
    port.failure = absent;
    const { link, seen } = linkTo(port);
    await link.start();
    expect(seen).toEqual(['opening', 'absent (port.absent)']);
    await vi.advanceTimersByTimeAsync(3_600_000);
    expect(port.openedAt.length).toBeGreaterThan(3590);
    const waits = port.openedAt.slice(1).map((at, k) => at - port.openedAt[k]!);
    expect(Math.max(...waits)).toBeLessThanOrEqual(reopenDelays.lastMs + 1);
    port.failure = null;
    await vi.advanceTimersByTimeAsync(reopenDelays.lastMs + 1);
    expect(seen.slice(-2)).toEqual(['opened', 'open']);
    await link.stop();
  });

  test('opens a new port after a hang-up', async () => {
    const port = new FakePort();
    const { link, seen } = linkTo(port);
    await link.start();
    port.listener!.data(Buffer.from('+1'), stamp);
    port.listener!.closed(new Error('gone'));
    expect(seen).toEqual(['opening', 'opened', 'open', 'data +1', 'closed', 'absent (port.absent)']);
    await vi.advanceTimersByTimeAsync(reopenDelays.firstMs);
    expect(seen.slice(-3)).toEqual(['opening', 'opened', 'open']);
    await link.stop();
  });

  test('hears nothing more of a port that is gone', async () => {
    const port = new FakePort();
    const { link, seen } = linkTo(port);
    await link.start();
    const old = port.listener!;
    old.closed(new Error('gone'));
    old.closed(new Error('gone twice'));
    old.data(Buffer.from('late'), stamp);
    expect(seen.filter((what) => what === 'closed')).toHaveLength(1);
    expect(seen.some((what) => what.startsWith('data'))).toBe(false);
    await vi.advanceTimersByTimeAsync(reopenDelays.firstMs);
    expect(port.openedAt).toHaveLength(2);
    await link.stop();
  });

  test('a port that is held by another program is faulted, and tried again', async () => {
    const port = new FakePort();
    port.failure = busy;
    const { link, seen } = linkTo(port);
    await link.start();
    expect(seen).toEqual(['opening', 'faulted (port.busy)']);
    port.failure = null;
    await vi.advanceTimersByTimeAsync(reopenDelays.firstMs);
    expect(seen.at(-1)).toBe('open');
    await link.stop();
  });

  test('after it was stopped it opens nothing, and closes what it had', async () => {
    const port = new FakePort();
    const { link, seen } = linkTo(port);
    await link.start();
    await link.stop();
    const before = [...seen];
    await vi.advanceTimersByTimeAsync(60_000);
    expect(port.openedAt).toHaveLength(1);
    expect(port.closes).toBe(1);
    expect(seen).toEqual(before);
  });
});
