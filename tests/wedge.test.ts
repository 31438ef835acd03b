import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest';
import type { TakeEvent } from '../shared/session/events.ts';
import { setupSchema } from '../shared/session/setup.ts';
import { openBrowser } from './tools/browser.ts';
import { DaemonProcess } from './tools/daemon-process.ts';
import { PageClient } from './tools/page-client.ts';

/** An instrument that poses as a keyboard, on the page of a real daemon. */

let folder = '';
let daemon: DaemonProcess;
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
  daemon = await DaemonProcess.start('serve', '--folder', folder);
  const client = await PageClient.open(daemon.url);
  const instrument = { name: 'micrometer', source: 'typed', keyed: true, unit: 'mm', graduation: 1 } as const;
  const setup = setupSchema.parse({
    kind: 'dovetail',
    part: 'Test bench',
    surface: 'dovetail',
    lengthMm: 400,
    stations: 5,
    pinDiameterMm: 10,
    flankAngleDeg: 55,
    form: 'male',
    instrument,
  });
  expect(await client.ask({ do: 'start', setup })).toBeNull();
  client.close();
  page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  await page.goto(daemon.url);
  await listening(true);
});
afterEach(async () => {
  await page?.close();
  await daemon?.stop();
  await rm(folder, { recursive: true, force: true });
});

const listening = (is: boolean) => page.locator(`[data-testid="wedge"][data-listens="${is}"]`).waitFor();
const says = (text: string) => page.getByTestId('wedge').getByText(text).waitFor();

/** Types as fast as an instrument does: all keys in one go. */
async function send(text: string): Promise<void> {
  for (const key of text) await page.keyboard.press(key === '\r' ? 'Enter' : key);
}

async function takes(): Promise<TakeEvent[]> {
  const [name] = (await readdir(folder)).filter((file) => file.endsWith('.jsonl'));
  const lines = (await readFile(join(folder, name!), 'utf8')).trim().split('\n').slice(1);
  return lines.map((line) => JSON.parse(line)).filter(({ type }) => type === 'take');
}
const shown = (count: number) =>
  page.waitForFunction(
    (wanted) => document.querySelector('[data-testid="sentence"]')?.textContent?.includes(wanted),
    `D${count}`,
  );

/** A folder for pictures of the page; none are made without. */
const pictures = process.env.WEDGE_PICTURES;

async function picture(name: string): Promise<void> {
  if (!pictures) return;
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    for (const size of [
      { width: 1280, height: 800 },
      { width: 1024, height: 768 },
      { width: 768, height: 1024 },
    ]) {
      await page.setViewportSize(size);
      await page.waitForTimeout(200);
      await page.screenshot({ path: `${pictures}/${name}-${colorScheme}-${size.width}.png` });
    }
  }
  await page.emulateMedia({ colorScheme: 'light' });
  await page.setViewportSize({ width: 1280, height: 800 });
}

test('what arrives whole is a take of the instrument, stamped when its keys came', async () => {
  const before = Date.now();
  await send('67.301\r');
  await shown(1);
  // No size over pins is that small: it counts only when the instrument sends it once more.
  await send('-0,5\r');
  await page.locator('[data-testid="refusal"][data-code="take.farOff"]').waitFor();
  await send('-0,5\r');
  await shown(2);
  await picture('wedge-listens');
  const [first, second] = await takes();
  expect(first).toMatchObject({ value: 67.301, raw: '67.301', by: 'instrument', steadiness: null });
  expect(second).toMatchObject({ value: -0.5, raw: '-0,5', sentAgain: true });
  const [from, to] = first!.keyed!;
  expect(from).toBeGreaterThanOrEqual(before);
  expect(to).toBeGreaterThanOrEqual(from);
  expect(to).toBeLessThanOrEqual(Date.now());
});

test('half of it is nothing, and the next one is not joined to it', async () => {
  await send('67.3');
  await says('"67.3" had no end: nothing was taken. Send it again.');
  // Whether this is the rest of it nobody can tell; behind its end the next one counts.
  await send('02\r');
  await says('"02" may be the rest of what broke off: nothing was taken. Send it again.');
  await send('67.302\r');
  await shown(1);
  expect((await takes()).map(({ raw }) => raw)).toEqual(['67.302']);
});

test('what is no number is refused in words, and nothing of it reaches the shortcuts', async () => {
  // Every letter is a shortcut of the page somewhere: notes, skips, finish.
  await send('NSZF\r');
  await page.getByText('is not one number').first().waitFor();
  expect(await page.locator('.question').count()).toBe(0);
  await send('67.3\r');
  await shown(1);
  expect(await takes()).toHaveLength(1);
});

test('a field that does not listen says so, and what comes then goes nowhere', async () => {
  await page.keyboard.press('Escape');
  await listening(false);
  await says('Not listening to the instrument');
  await picture('wedge-deaf');
  await send('67.3N\r');
  await says('Something was typed while this field did not listen');
  await listening(true);
  expect(await page.locator('.question').count()).toBe(0);
  expect(await takes()).toEqual([]);
  // The shortcuts are there again once the field is left.
  await page.keyboard.press('Escape');
  await listening(false);
  await page.keyboard.press('n');
  await page.locator('.question').waitFor();
});
