import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { startDaemon } from '../daemon/daemon.ts';
import { realPort } from '../daemon/ports/real.ts';
import { Speaker } from '../daemon/simulate/speaker.ts';
import { findProfile } from '../protocols/shipped.ts';
import type { BenchPort, CommandInput, WantedPort } from '../shared/messages.ts';
import { PageClient } from './tools/page-client.ts';
import { PtyPair } from './tools/pty-pair.ts';
import { testFolder } from './tools/test-folder.ts';

type ProvingInput = Extract<CommandInput, { do: 'keep-instrument' }>['proving'];

/** A daemon that serves, and a page of it. */
async function begun(): Promise<{ folder: string; page: PageClient }> {
  const folder = testFolder();
  const daemon = await startDaemon({ mode: 'serve', folder: join(folder, 'recordings'), port: 0 });
  const page = await PageClient.open(daemon.url);
  onTestFinished(async () => {
    page.close();
    await daemon.close();
  });
  return { folder, page };
}

/** A cable with an instrument of that profile on its far end. */
async function plugged(folder: string, profile: string) {
  const place = join(folder, profile);
  await mkdir(place);
  const cable = new PtyPair(place);
  await cable.plugIn();
  const speaker = new Speaker(findProfile(profile), realPort(cable.a));
  await speaker.start();
  const answers: string[] = [];
  speaker.said$.subscribe(({ bytes }) => answers.push(bytes));
  onTestFinished(async () => {
    await speaker.stop();
    await cable.pullOut();
  });
  return { cable, answers };
}

const listen = (page: PageClient, ...ports: WantedPort[]) => page.ask({ do: 'bench', ports });
const heard = (page: PageClient, { cable }: { cable: PtyPair }): BenchPort | undefined =>
  page.last('bench')?.bench?.ports.find(({ port }) => port === cable.b);

test('two ports are listened to, and nothing is written to one that was not assigned', async () => {
  const { folder, page } = await begun();
  const speaks = await plugged(folder, 'line-decimal');
  const asked = await plugged(folder, 'ask-decimal');
  expect(await listen(page, { port: speaks.cable.b }, { port: asked.cable.b })).toBeNull();
  await page.until(() => (heard(page, speaks)?.fits[0]?.frames ?? 0) > 20);
  const { hex, fits, bytes } = heard(page, speaks)!;
  expect(fits[0]).toMatchObject({ profile: 'line-decimal', reads: [{ channel: 'tilt', state: 'ok' }] });
  expect(Buffer.from(hex, 'hex').toString('latin1')).toMatch(/[+-]\d+\.\d\r\n/);
  expect(bytes).toBeGreaterThan(20 * 6);
  expect(asked.answers).toEqual([]);
  expect(heard(page, asked)).toMatchObject({
    link: 'open',
    bytes: 0,
    hint: expect.stringContaining('Nothing comes'),
  });

  await listen(
    page,
    { port: speaks.cable.b, profile: 'line-decimal' },
    { port: asked.cable.b, profile: 'ask-decimal' },
  );
  await page.until(() => (heard(page, asked)?.fits[0]?.frames ?? 0) > 2);
  expect(asked.answers.length).toBeGreaterThan(2);
  const streams = [speaks, asked].flatMap((one) => heard(page, one)!.streams);
  expect(streams).toMatchObject([
    { reads: 'tilt', unit: 'um/m', unitOpen: true },
    { reads: 'tilt', unit: 'um/m', unitOpen: false },
  ]);
  const needles = () =>
    new Set(page.messages.flatMap((one) => (one.type === 'bench-live' ? [one.live.from] : [])));
  await page.until(() => needles().size === 2);
  expect([...needles()].sort()).toEqual(streams.map(({ id }) => id).sort());
});

test('a line that is set otherwise is found by itself', async () => {
  const { folder, page } = await begun();
  const one = await plugged(folder, 'labelled-channels');
  await listen(page, { port: one.cable.b });
  await page.until(() => heard(page, one)?.fits[0] !== undefined);
  expect(heard(page, one)).toMatchObject({ line: '19200 baud, 8 data bits, no parity, 1 stop bit' });
  await listen(page, { port: one.cable.b, profile: 'labelled-channels' });
  await page.until(() => heard(page, one)?.profile !== undefined);
  // The temperature is nothing to measure metal with.
  expect(heard(page, one)?.streams.map(({ channel }) => channel)).toEqual(['x', 'y']);
});

test('a cable that falls out is told, and listened to again when it is back', async () => {
  const { folder, page } = await begun();
  const one = await plugged(folder, 'line-decimal');
  await listen(page, { port: one.cable.b, profile: 'line-decimal' });
  await page.until(() => (heard(page, one)?.bytes ?? 0) > 50);
  await one.cable.pullOut();
  await page.until(() => heard(page, one)?.link === 'absent');
  expect(heard(page, one)?.error).toMatchObject({ code: 'port.absent' });
  await one.cable.plugIn();
  await page.until(() => heard(page, one)?.link === 'open' && heard(page, one)?.error === undefined);
  const before = heard(page, one)!.bytes;
  await page.until(() => heard(page, one)!.bytes > before);
});

test('a survey takes the port over, and no port is listened to beside it', async () => {
  const { folder, page } = await begun();
  const one = await plugged(folder, 'line-decimal');
  await listen(page, { port: one.cable.b });
  await page.until(() => (heard(page, one)?.bytes ?? 0) > 0);
  const instrument = {
    name: 'L2',
    source: 'cable',
    port: one.cable.b,
    profile: 'line-decimal',
    unit: 'um/m',
  } as const;
  const setup = {
    kind: 'way',
    part: 'bed',
    surface: 'way',
    lengthMm: 900,
    baseMm: 150,
    stations: 7,
    instrument,
  } as const;
  expect(await page.ask({ do: 'start', setup })).toBeNull();
  await page.until(() => page.last('instruments')?.instruments[0]?.link === 'open');
  await page.until(() => page.last('bench')?.bench === null);
  expect(await listen(page, { port: one.cable.b })).toMatchObject({ code: 'command.refused' });
  expect(page.session?.setup.instrument.provedOn).toBeUndefined();
});

test('what is not proved is not kept, and what is no proving is not understood', async () => {
  const { page } = await begun();
  const proving = {
    name: 'I1',
    reads: 'height',
    source: 'typed',
    unit: 'um',
    unitOpen: true,
    graduation: 1,
    resolution: 0.2,
    stepUm: 100,
    stepIs: 'block',
    takes: [],
  } satisfies ProvingInput;
  expect(await page.ask({ do: 'keep-instrument', proving })).toMatchObject({ code: 'command.refused' });
  expect(await page.ask({ do: 'keep-instrument', proving: { ...proving, unit: 'um/m' } })).toMatchObject({
    code: 'command.invalid',
  });
  expect(
    await page.ask({ do: 'bench', ports: [{ port: '/dev/nothing', profile: 'no-such' }] }),
  ).toMatchObject({
    code: 'profile.invalid',
  });
  expect(page.last('bench')?.bench ?? null).toBeNull();
});
