import { expect, test } from 'vitest';
import { encode } from '../../protocols/encode.ts';
import type { Profile } from '../../protocols/profile.ts';
import { findProfile, shippedProfiles } from '../../protocols/shipped.ts';
import type { LineSettings, PortListener, PortMaker } from '../ports/port.ts';
import { LineHunt } from './line-hunt.ts';

/** A port on which a test says what arrives when. */
class TestPort implements PortMaker {
  readonly path = 'test';
  readonly lines: LineSettings[] = [];
  #listener: PortListener | null = null;
  #nowMs = 0;

  async open(line: LineSettings, listener: PortListener) {
    this.lines.push(line);
    this.#nowMs = performance.now();
    this.#listener = listener;
    return {
      write: () => {
        throw new Error('nothing is written to a port that nobody assigned');
      },
      close: async () => {
        this.#listener = null;
        listener.closed(null);
      },
    };
  }

  /** Bytes that arrive at once, so long after the last ones. */
  arrive(bytes: string, afterMs = 0): void {
    this.#nowMs += afterMs;
    this.#listener?.data(Buffer.from(bytes, 'latin1'), { t: 0, m: this.#nowMs });
  }
}

/** Until what was put off has been done: the port is opened anew. */
const settled = () => new Promise<void>((resolve) => setImmediate(resolve));

const sumFrame = findProfile('sum-frame');
const frame = (value: number) =>
  encode(sumFrame, [{ channel: 'tip', value, state: 'ok', decimals: 4, unit: 'mm' }]);
const isOf = ({ line }: Profile, { baudRate, dataBits, parity, stopBits }: LineSettings) =>
  line.baudRate === baudRate &&
  line.dataBits === dataBits &&
  line.parity === parity &&
  line.stopBits === stopBits;

async function hunting(profiles: readonly Profile[]) {
  const port = new TestPort();
  const hunt = new LineHunt(port, profiles, { bytes: () => {}, link: () => {} });
  await hunt.start();
  return { port, hunt };
}

test('every line is tried, and the right one is kept', async () => {
  const { port, hunt } = await hunting(shippedProfiles);
  for (let k = 0; hunt.acquaintance.fits.length === 0; k += 1) {
    expect(k).toBeLessThan(1000);
    port.arrive(frame(k / 1000), 50);
    await settled();
  }
  const tried = port.lines.length;
  expect(isOf(sumFrame, hunt.line)).toBe(true);
  for (let k = 0; k < 200; k += 1) port.arrive(frame(k / 1000), 50);
  await settled();
  expect(port.lines).toHaveLength(tried);
  expect(hunt.acquaintance.fits[0]).toMatchObject({ frames: 201, discarded: 0 });
});

test('a line is not given up for time that passes while little arrives', async () => {
  const { port, hunt } = await hunting([sumFrame, findProfile('line-decimal')]);
  // Torn frames with long stalls between them: time alone would have judged the right line by these.
  port.arrive(frame(1).slice(5));
  port.arrive(frame(2).slice(0, 7), 5000);
  port.arrive(frame(3).slice(6), 5000);
  await settled();
  expect(port.lines).toHaveLength(1);
  port.arrive(frame(4), 5000);
  expect(hunt.acquaintance.fits[0]).toMatchObject({ frames: 1 });
});

test('the right line is found in a later round when its first trial was spoilt', async () => {
  const { port, hunt } = await hunting([sumFrame, findProfile('line-decimal')]);
  for (let k = 0; k < 4; k += 1) port.arrive('\x00\x1c\xe0\x07', 600);
  await settled();
  expect(isOf(sumFrame, hunt.line)).toBe(false);
  for (let k = 0; hunt.acquaintance.fits.length === 0; k += 1) {
    expect(k).toBeLessThan(100);
    port.arrive(frame(k / 1000), 50);
    await settled();
  }
  expect(isOf(sumFrame, hunt.line)).toBe(true);
});

test('a frame that noise happens to make keeps no line', async () => {
  const { port, hunt } = await hunting([findProfile('line-decimal'), sumFrame]);
  port.arrive('\r\n+0001.5\r\n');
  expect(hunt.acquaintance.fits).toHaveLength(1);
  for (let k = 0; k < 10; k += 1) port.arrive('\x80\xf8\x07\xe0\x1c\xff\x80\xf8\x07\xe0', 50);
  await settled();
  expect(isOf(sumFrame, hunt.line)).toBe(true);
});
