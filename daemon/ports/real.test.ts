import { SerialPortMock } from 'serialport';
import { afterEach, expect, test } from 'vitest';
import { findProfile } from '../../protocols/shipped.ts';
import { Instrument } from '../instruments/instrument.ts';
import { openError, realPort } from './real.ts';

afterEach(() => {
  SerialPortMock.binding.reset();
});

/** An instrument on the serial library's own mock, with a device behind it that speaks when told to. */
async function mocked(profileId: string, maxReadSize: number) {
  const path = '/dev/mocked';
  SerialPortMock.binding.createPort(path, { echo: false, record: true, maxReadSize });
  let port: SerialPortMock | undefined;
  class Kept extends SerialPortMock {
    constructor(options: ConstructorParameters<typeof SerialPortMock>[0]) {
      super(options);
      port = this;
    }
  }
  const instrument = new Instrument('level', findProfile(profileId), realPort(path, Kept as never));
  const values: (number | null)[] = [];
  instrument.readings$.subscribe(({ decoded }) => values.push(decoded.value));
  await instrument.start();
  return { instrument, values, binding: port!.port! };
}

test.each([1, 2, 3, 7, 64])(
  'readings are whole whatever the port hands over at once: %i bytes',
  async (size) => {
    const { instrument, values, binding } = await mocked('line-decimal', size);
    const sent = Array.from({ length: 50 }, (_, k) => (k % 2 ? -1 : 1) * (k + 0.5));
    const done = new Promise<void>((resolve) => {
      instrument.readings$.subscribe(() => values.length === sent.length && resolve());
    });
    const frames = sent.map(
      (value) => `${value < 0 ? '-' : '+'}${Math.abs(value).toFixed(1).padStart(6, '0')}\r\n`,
    );
    binding.emitData(`lost head\r\n${frames.join('')}`);
    await done;
    expect(values).toEqual(sent);
    expect(instrument.state$.value.discarded).toBe(1);
    await instrument.stop();
  },
);

test('an instrument that is asked answers when asked', async () => {
  const { instrument, values, binding } = await mocked('ask-decimal', 16);
  const answered = new Promise<void>((resolve) => {
    instrument.readings$.subscribe(() => resolve());
  });
  binding.emitData('\r');
  await new Promise<void>((resolve) => {
    const watch = setInterval(() => {
      if (binding.lastWrite === null) return;
      clearInterval(watch);
      resolve();
    }, 10);
  });
  expect(binding.lastWrite!.toString('latin1')).toBe('R\r');
  binding.emitData('L -00.25 mm/m\r');
  await answered;
  expect(values).toEqual([-0.25]);
  await instrument.stop();
});

test.each([
  ['Error: No such file or directory, cannot open /dev/ttyUSB9', 'port.absent'],
  ['Error: Permission denied, cannot open /dev/ttyUSB0', 'port.denied'],
  ['Error Resource temporarily unavailable Cannot lock port', 'port.busy'],
  ['Opening COM3: Access denied', 'port.busy'],
  ['Error: Input/output error', 'port.failed'],
])('%s is %s', (text, code) => {
  const error = openError('/dev/x', new Error(text));
  expect(error.code).toBe(code);
  expect(error.remedy).not.toBe('');
});

test('bytes that waited in the port before it was opened count for nothing', async () => {
  SerialPortMock.binding.createPort('/dev/mocked', { echo: false, record: true });
  class Waiting extends SerialPortMock {
    override flush(done?: (error: Error | null) => void): void {
      this.emit('data', Buffer.from('+0900.0\r\n+0900.0\r\n'));
      super.flush(done);
    }
  }
  const heard: string[] = [];
  const port = await realPort('/dev/mocked', Waiting as never).open(findProfile('line-decimal').line, {
    data: (bytes) => heard.push(bytes.toString()),
    closed: () => {},
  });
  expect(heard).toEqual([]);
  await port.close();
});

test.each([
  [{ dtr: true }, { dtr: true, rts: true }],
  [{ dtr: false }, { dtr: false, rts: true }],
  [{ rts: false }, { dtr: true, rts: false }],
  [{}, null],
])('of control lines %j, those that no profile names stay as the system raised them', async (named, set) => {
  const written: unknown[] = [];
  class Watched extends SerialPortMock {
    override set(options: Parameters<SerialPortMock['set']>[0]) {
      written.push(options);
    }
  }
  SerialPortMock.binding.createPort('/dev/mocked');
  const line = { baudRate: 9600, dataBits: 8, parity: 'none', stopBits: 1, ...named } as const;
  const port = await realPort('/dev/mocked', Watched as never).open(line, {
    data: () => {},
    closed: () => {},
  });
  await port.close();
  expect(written).toEqual(set === null ? [] : [set]);
});
