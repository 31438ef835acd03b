import { expect, test } from 'vitest';
import { verifyRecording } from '../daemon/recording/verify.ts';
import { letThemSpeak } from './tools/many-instruments.ts';
import { testFolder } from './tools/test-folder.ts';

const rates = [1000, 50, 50, 50, 50, 50, 50, 50, 50];

test('eight instruments at 50 readings a second and one at 1,000 at once: nothing is lost', async () => {
  const { sent, readings, events, path, share } = await letThemSpeak(testFolder(), rates, 5000);
  console.log(
    `${sent.reduce((sum, count) => sum + count)} readings; the daemon used ${(100 * share).toFixed(0)} % of a processor`,
  );
  expect(sent).toEqual(rates.map((rate) => 5 * rate));
  readings.forEach((own, k) => {
    // Each line is there, once, as it was sent and in its order.
    expect(own.map(({ value }) => value)).toEqual(Array.from({ length: sent[k]! }, (_, n) => n / 10));
  });
  expect(events.filter(({ type }) => type === 'discarded' || type === 'gap')).toEqual([]);
  expect(await verifyRecording(path)).toMatchObject({ problems: [] });
}, 120_000);
