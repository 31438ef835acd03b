import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { SerialPort } from 'serialport';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest';
import { readRecording } from '../daemon/recording/reader.ts';
import { encode } from '../protocols/encode.ts';
import { findProfile } from '../protocols/shipped.ts';
import { setupSchema } from '../shared/session/setup.ts';
import { toSheet } from '../shared/session/to-sheet.ts';
import { openBrowser } from './tools/browser.ts';
import { DaemonProcess } from './tools/daemon-process.ts';
import { PageClient } from './tools/page-client.ts';
import { PtyPair } from './tools/pty-pair.ts';

/** An indicator that sends one reading when its own button is pressed, on a pseudo-terminal of a real daemon. */

const profile = findProfile('bcd-nibbles-hex');

let folder = '';
let cable: PtyPair;
let gauge: SerialPort;
let daemon: DaemonProcess;
let client: PageClient;
let browser: Browser;
let page: Page;

beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
});
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'wayscribe-'));
  cable = new PtyPair(folder);
  await cable.plugIn();
  gauge = new SerialPort({ path: cable.a, baudRate: 9600, hupcl: false });
  daemon = await DaemonProcess.start('serve', '--folder', join(folder, 'recordings'));
  client = await PageClient.open(daemon.url);
  const instrument = {
    name: 'indicator',
    source: 'cable',
    port: cable.b,
    profile: profile.id,
    unit: 'mm',
    sigma: 0.0004,
    provedOn: '2026-03-01',
  } as const;
  const setup = setupSchema.parse({
    kind: 'slide',
    part: 'Test bench',
    surface: 'slide',
    travelMm: 300,
    stations: 4,
    back: 'no',
    plus: 'high',
    instrument,
  });
  expect(await client.ask({ do: 'start', setup })).toBeNull();
  await client.until(() => client.last('instruments')?.instruments[0]?.link === 'open');
  gauge.write('\r\n');
  page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  await page.goto(daemon.url);
  await page.locator('[data-testid="root"][data-view="survey"]').waitFor();
});
afterEach(async () => {
  await page?.close();
  client?.close();
  await daemon?.stop();
  await new Promise<void>((done) => gauge.close(() => done()));
  await cable?.pullOut();
  await rm(folder, { recursive: true, force: true });
});

const frame = (mm: number) =>
  encode(profile, [{ channel: profile.channels[0]!.name, value: mm, state: 'ok', decimals: 3, unit: 'mm' }]);
const press = (mm: number) => gauge.write(Buffer.from(frame(mm), 'latin1'));
const takes = () => client.session!.takes.map(({ event }) => event);

test('each press is a take of one reading, with the spread that was proved', async () => {
  press(0.012);
  await client.until(() => takes().length === 1);
  press(-0.003);
  // The same value again is meant as well: nothing has to be felt to move, or to have settled.
  press(0.012);
  await client.until(() => takes().length === 3);
  expect(takes()).toMatchObject([
    { value: 0.012, by: 'instrument', count: 1, spread: null, steadiness: null },
    { value: -0.003, by: 'instrument' },
    { value: 0.012, by: 'instrument' },
  ]);
  expect(new Set(takes().map(({ place }) => place.at.join())).size).toBe(3);
  expect(toSheet(client.session!).sweeps?.[0]?.sigma).toBe(0.0004);
  const [name] = (await readdir(join(folder, 'recordings'))).filter((file) => file.endsWith('.jsonl'));
  const { events } = await readRecording(join(folder, 'recordings', name!));
  const readings = events.filter(({ type }) => type === 'reading').map(({ seq }) => seq);
  expect(takes().map(({ readings }) => readings)).toEqual(readings.map((seq) => [seq, seq]));
});

test('a button that bounces takes once, and the page says so', async () => {
  gauge.write(Buffer.from(frame(0.012).repeat(2), 'latin1'));
  const told = page.locator('[data-testid="refusal"][data-code="take.bounced"]');
  await told.waitFor();
  expect(await told.textContent()).toContain('taken once');
  expect(takes()).toHaveLength(1);
  press(0.005);
  await client.until(() => takes().length === 2);
  await told.waitFor({ state: 'detached' });
  expect(takes().map(({ value }) => value)).toEqual([0.012, 0.005]);
});

test('a key takes nothing that was pressed before, and the page says whose button it is', async () => {
  expect(await client.ask({ do: 'take', by: 'key' })).toMatchObject({ code: 'take.silent' });
  press(0.012);
  await client.until(() => takes().length === 1);
  expect(await client.ask({ do: 'take', by: 'key', insist: true })).toMatchObject({
    code: 'take.silent',
    remedy: 'press the button on the instrument',
  });
  expect(takes()).toHaveLength(1);
  const control = page.getByTestId('take');
  expect(await control.isDisabled()).toBe(true);
  expect(await control.textContent()).toContain('Press its button');
  expect(await page.getByTestId('hands-free').count()).toBe(0);
  if (process.env.BY_BUTTON_PICTURE) await page.screenshot({ path: process.env.BY_BUTTON_PICTURE });
});

test('a press that cannot be taken is told each time, and is no take later', async () => {
  for (const mm of [0.001, 0.002, 0.003, 0.004]) press(mm);
  await client.until(() => takes().length === 4);
  const refusals = () => client.messages.filter(({ type }) => type === 'refused').length;
  press(0.005);
  await client.until(() => refusals() === 1);
  press(0.006);
  await client.until(() => refusals() === 2);
  expect(client.last('refused')?.error.message).toBe('every station is taken');
  expect(takes()).toHaveLength(4);
});
