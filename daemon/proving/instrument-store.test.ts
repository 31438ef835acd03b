import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { current, type ProvedInstrument } from '../../shared/proving/instruments.ts';
import { provingSchema } from '../../shared/proving/proving.ts';
import { testFolder } from '../../tests/tools/test-folder.ts';
import { InstrumentStore } from './instrument-store.ts';

function proved(name: string, t: number, port?: string): ProvedInstrument {
  const proving = provingSchema.parse({
    name,
    reads: 'height',
    source: port ? 'cable' : 'typed',
    ...(port && { port, profile: 'sum-frame' }),
    unit: 'um',
    unitOpen: true,
    graduation: 1,
    resolution: 0.2,
    stepUm: 100,
    stepIs: 'block',
    takes: [],
  });
  return { t, day: '2026-02-03', sign: 1, sigma: 0.3, proving };
}

test('what was kept is there again, and an earlier proving is not lost', async () => {
  const folder = testFolder();
  const store = new InstrumentStore(folder);
  expect(await store.proved()).toEqual([]);
  await Promise.all([store.keep(proved('I1', 1)), store.keep(proved('L2', 2)), store.keep(proved('I1', 3))]);
  const again = await new InstrumentStore(folder).proved();
  expect(again.map(({ t }) => t)).toEqual([1, 2, 3]);
  expect(current(again).map(({ t }) => t)).toEqual([3, 2]);
  expect(existsSync(`${store.path}.new`)).toBe(false);
});

test('an instrument that moved to another port keeps what was proved', async () => {
  const store = new InstrumentStore(testFolder());
  const one = proved('I1', 1, 'usb:0403:6001:socket:a');
  await store.keep(one);
  await store.bind('I1', 'usb:0403:6001:socket:b');
  expect(current(await store.proved())).toEqual([
    { ...one, proving: { ...one.proving, port: 'usb:0403:6001:socket:b' } },
  ]);
  await expect(store.bind('I2', '/dev/ttyS0')).rejects.toThrow(/no such instrument/);
});

test.each([
  ['{"instruments":1,', /is no JSON/],
  ['{"instruments":2,"proved":[]}', /instruments: /],
  ['{"instruments":1,"proved":[],"more":1}', /the whole: .*more/],
  ['{"instruments":1,"proved":[{}]}', /proved.0.t/],
])('a file that says %s is told and left alone', async (text, why) => {
  const store = new InstrumentStore(testFolder());
  writeFileSync(store.path, text);
  await expect(store.proved()).rejects.toThrow(why);
  await expect(store.keep(proved('I1', 1))).rejects.toMatchObject({ code: 'instruments.invalid' });
  expect(readFileSync(store.path, 'utf8')).toBe(text);
});

test('a half-written file of an earlier time is in nobody’s way', async () => {
  const store = new InstrumentStore(testFolder());
  writeFileSync(`${store.path}.new`, '{"instr');
  await store.keep(proved('I1', 1));
  expect(await store.proved()).toHaveLength(1);
});

test('a folder that is gone is an error that says so', async () => {
  const store = new InstrumentStore(`${testFolder()}/gone`);
  await expect(store.keep(proved('I1', 1))).rejects.toMatchObject({ code: 'recording.unwritable' });
});
