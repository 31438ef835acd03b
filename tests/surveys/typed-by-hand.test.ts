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
  page.setDefaultTimeout(60_000);
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
  // Behind the last reading the field is gone, and only then keys are the page's: until then they are text.
  if (observer.session!.next === null) await page.getByTestId('typed').waitFor({ state: 'detached' });
  else {
    await page.waitForFunction(
      () => document.querySelector<HTMLInputElement>('[data-testid="typed"]')?.value === '',
    );
  }
}

/** Leaves the survey of the level and begins another one, typed as well. */
async function begin(setup: object): Promise<void> {
  const first = observer.header!.id;
  expect(await observer.ask({ do: 'leave' })).toBeNull();
  expect(await observer.ask({ do: 'start', setup } as never)).toBeNull();
  await observer.until(() => observer.header !== null && observer.header.id !== first);
  // The page follows behind: what is typed into the survey it still shows is lost.
  for (const station of observer.session!.next!.at) await says(station);
  await page.getByTestId('typed').waitFor();
}

async function finished(): Promise<void> {
  await page.keyboard.press('f');
  await page.getByTestId('finish-yes').click();
  await page.locator('[data-testid="root"][data-view="result"]').waitFor();
}

const says = (words: string) =>
  page.waitForFunction(
    (wanted) => document.querySelector('[data-testid="sentence"]')?.textContent?.includes(wanted),
    words,
  );

test('two collars are typed, measured once more, and tell the taper and the axis', async () => {
  const instrument = { name: 'micrometer', source: 'typed', unit: 'mm', graduation: 1, sigma: 0.002 };
  await begin({ kind: 'collars', part: 'Lathe 3', surface: 'test cut', lengthMm: 200, instrument });
  await type('40,000');
  await type('40,021');
  await page.keyboard.press('b');
  await says('K1');
  await type('40,019');
  await type('40,000');
  await finished();
  await says('Test cut tapers 20 µm over 200 mm: bigger at the tail end');
  const result = await page.request.get(
    new URL((await page.getByTestId('export-result').getAttribute('href'))!, daemon.url).href,
  );
  const { figures, readings } = await result.json();
  expect(figures.taper.value).toBeCloseTo(20, 6);
  // Each diameter is the mean of two that are sure to 2 µm: 2 · √(2/2).
  expect(figures.taper.u).toBeCloseTo(2, 6);
  expect(figures.axisSlope.value).toBeCloseTo(50, 6);
  expect(readings.every(({ redundancy }: { redundancy: number }) => redundancy > 0.4)).toBe(true);
}, 120_000);

test('a faced face is typed by the gauge blocks under a straightedge', async () => {
  const instrument = { name: 'blocks', source: 'typed', unit: 'mm', graduation: 1, sigma: 0.002 };
  const face = { kind: 'face', part: 'Lathe 3', surface: 'face plate', lengthMm: 300, plus: 'low' };
  await begin({ ...face, instrument });
  for (const text of ['5,000', '5,016', '5,004']) await type(text);
  await finished();
  await says('Face plate: 14 µm hollow in the middle');
}, 120_000);

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
}, 120_000);

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
}, 120_000);

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
}, 120_000);

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
}, 120_000);
