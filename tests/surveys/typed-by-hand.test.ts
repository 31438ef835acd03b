import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest';
import { openBrowser } from '../tools/browser.ts';
import { DaemonProcess } from '../tools/daemon-process.ts';
import { PageClient } from '../tools/page-client.ts';

/** A level that is read by eye: everything is done with the keyboard alone. */

let browser: Browser;
let folder = '';
let daemon: DaemonProcess;
let page: Page;
let observer: PageClient;

beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
});
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'wayscribe-'));
  daemon = await DaemonProcess.start('serve', '--folder', join(folder, 'recordings'));
  page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  page.setDefaultTimeout(15_000);
  observer = await PageClient.open(daemon.url);
  const instrument = { name: 'frame level', source: 'typed', unit: 'mm/m', graduation: 0.02, sigma: 0.1 };
  const setup = {
    ...{ kind: 'way', part: 'Lathe 3', surface: 'front way', lengthMm: 1050, baseMm: 150, stations: 8 },
    ...{ back: 'same', instrument },
  };
  expect(await observer.ask({ do: 'start', setup } as never)).toBeNull();
  await page.goto(daemon.url);
  await page.getByTestId('typed').waitFor();
});
afterEach(async () => {
  observer?.close();
  await page?.close();
  await daemon?.stop();
  await rm(folder, { recursive: true, force: true });
});

const values = () =>
  observer.session!.takes.filter(({ out }) => out === undefined).map(({ event }) => event.value);

async function type(text: string): Promise<void> {
  const before = observer.session!.takes.length;
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
  await observer.until(() => observer.session!.takes.length > before);
  // Behind the last reading the field is gone.
  await page.waitForFunction(() => !document.querySelector<HTMLInputElement>('[data-testid="typed"]')?.value);
}

test('a slip of ten is asked back, and counts only when it is sent again', async () => {
  for (const text of ['1,5', '1,0', '2,0', '1,5']) await type(text);
  await page.keyboard.type('15');
  await page.keyboard.press('Enter');
  const refusal = page.locator('[data-testid="refusal"][data-code="take.farOff"]');
  await refusal.waitFor();
  expect(await refusal.textContent()).toBe(
    '15 lies far from what was read so far, 1.0 to 2.0. 1.5 would fit: see where its point stands, or send it again to take it as it is.',
  );
  expect(values()).toEqual([1.5, 1, 2, 1.5]);
  // It is mended, and the mended one counts at once.
  for (let k = 0; k < 2; k += 1) await page.keyboard.press('Backspace');
  await type('1,4');
  await page.keyboard.type('16');
  await page.keyboard.press('Enter');
  await refusal.waitFor();
  await page.getByTestId('take').getByText('Take it as it is').waitFor();
  await page.keyboard.press('Enter');
  await observer.until(() => values().at(-1) === 16);
  expect(observer.session!.takes.at(-1)!.event.sentAgain).toBe(true);
});

test('Escape leads from the field to the keys of the page, and a digit back into it', async () => {
  await type('1,5');
  await type('1,0');
  // From the field, and also from a question that was closed.
  for (let k = 0; k < 2; k += 1) {
    await page.keyboard.press('Escape');
    await page.keyboard.press('z');
    await page.getByTestId('reasons').waitFor();
    // What would be undone is marked in the drawing.
    await page.locator('.picked').first().waitFor();
    await page.keyboard.press('Escape');
    await page.getByTestId('typed').waitFor();
    expect(await page.getByTestId('typed').inputValue()).toBe('');
  }
  await type('-0,5');
  expect(values()).toEqual([1.5, 1, -0.5]);
});

test('the working says what its heights stand over, and shows them over it', async () => {
  for (const text of ['1,5', '1,0', '0,5', '1,5', '2,0', '1,0', '0,5']) await type(text);
  for (const text of ['0,5', '1,0', '2,0', '1,5', '0,5', '1,0', '1,5']) await type(text);
  await page.keyboard.press('Escape');
  await page.keyboard.press('f');
  await page.getByTestId('finish-yes').click();
  await page.locator('[data-testid="root"][data-view="result"]').waitFor();
  await page.keyboard.press('w');
  const over = page.getByTestId('over').first();
  const height = page.getByTestId('height-F3').first();
  const shown: string[] = [];
  for (const [key, words] of [
    ['1', 'the line through its ends'],
    ['2', 'the least-squares line'],
    ['3', 'the minimum zone'],
  ] as const) {
    await page.keyboard.press(key);
    await page.waitForFunction(
      (text) => document.querySelector('[data-testid="over"]')?.textContent?.includes(text),
      words,
    );
    expect(await over.textContent()).toBe(`All walks, over ${words} µm`);
    shown.push((await height.textContent())!);
  }
  expect(new Set(shown).size).toBe(3);
});

test('R begins at the place that is doubted, and all that follows it can be read again', async () => {
  const out = ['1,5', '1,0', '0,5', '1,5', '2,0', '1,0', '0,5'];
  for (const text of out) await type(text);
  for (const text of ['0,5', '1,0', '2,0', '4,5', '0,5', '1,0', '1,5']) await type(text);
  await page.keyboard.press('Escape');
  await page.keyboard.press('r');
  const question = page.getByTestId('place-question');
  await question.waitFor();
  expect(await question.textContent()).toContain('F3 – F4');
  await page.keyboard.press('a');
  await observer.until(() => observer.session!.next?.at.join() === 'F3,F4' && values().length === 10);
  expect(values()).toHaveLength(10);
});
