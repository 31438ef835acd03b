import { copyFile, mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest';
import { readRecording } from '../daemon/recording/reader.ts';
import { demoSetups } from '../shared/session/demo-setups.ts';
import { openBrowser } from './tools/browser.ts';
import { DaemonProcess } from './tools/daemon-process.ts';
import { readOnce } from './tools/read-once.ts';

let browser: Browser;
let page: Page;
let folder = '';
let daemon: DaemonProcess | null = null;
const wrongs: string[] = [];

beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser?.close());
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'wayscribe-'));
  page = await browser.newPage({ viewport: { width: 1280, height: 800 }, reducedMotion: 'reduce' });
  wrongs.length = 0;
  page.on('pageerror', (error) => wrongs.push(String(error)));
});
afterEach(async () => {
  expect(wrongs).toEqual([]);
  await page.close();
  await daemon?.stop();
  daemon = null;
  await rm(folder, { recursive: true, force: true });
});

/** A recording as a file, every placement of the demo of a kind read once. */
function fileOf(kind: keyof typeof demoSetups) {
  const { header, events } = readOnce(demoSetups[kind]);
  const last = events.length + 1;
  const lines = [header, ...events, { seq: last, t: 1000 * last, m: 1000 * last, type: 'end' }];
  return {
    name: `${kind}.jsonl`,
    mimeType: '',
    buffer: Buffer.from(`${lines.map((line) => JSON.stringify(line)).join('\n')}\n`),
  };
}

test('`wayscribe replay FILE` prints an address whose page plays that file', async () => {
  const path = 'recordings/lessons/chip.jsonl';
  daemon = await DaemonProcess.start('replay', path, '--folder', folder, '--no-open');
  await page.goto(daemon.url);
  await page.getByTestId('time-line').waitFor();
  await page.keyboard.press('End');
  await page.locator('[data-testid="root"][data-view="result"]').waitFor();
  const { events } = await readRecording(path);
  await page.locator(`[data-testid="root"][data-seq="${events.at(-1)!.seq}"]`).waitFor();
  // Closed, it comes back to the page of the daemon.
  await page.keyboard.press('x');
  await page.getByTestId('open-file').waitFor({ state: 'attached' });
});

test('a recording is held against another one that the daemon has', async () => {
  for (const id of ['clean-walk', 'sign-inverted', 'twist-by-wear']) {
    await copyFile(`recordings/lessons/${id}.jsonl`, join(folder, `${id}.jsonl`));
  }
  daemon = await DaemonProcess.start('serve', '--folder', folder);
  await page.goto(daemon.url);
  await page.getByTestId('open-file').setInputFiles('recordings/lessons/clean-walk.jsonl');
  await page.getByTestId('time-line').waitFor();
  await page.keyboard.press('o');
  await page.getByTestId('beside-sign-inverted').click();
  await page.getByTestId('habits').waitFor();
  expect(await page.getByTestId('compare').textContent()).toMatch(/7 of 9 stations differ, F4 most: by 4\d/);
  // Of another part it says that the two cannot be compared, and offers the choice again.
  await page.getByTestId('beside-another').click();
  await page.getByTestId('beside-choice').locator('summary').click();
  await page.getByTestId('beside-twist-by-wear').click();
  await page
    .getByTestId('compare')
    .filter({ hasText: 'has no stations in common with this recording' })
    .waitFor();
});

test.each(Object.keys(demoSetups) as (keyof typeof demoSetups)[])(
  'in the working of a %s every height lights readings, and every reading says what checks it',
  async (kind) => {
    daemon = await DaemonProcess.start('serve', '--folder', folder);
    await page.goto(daemon.url);
    await page.getByTestId('open-file').setInputFiles(fileOf(kind));
    await page.getByTestId('time-line').waitFor();
    await page.keyboard.press('End');
    await page.keyboard.press('w');
    const working = page.locator('section.working');
    await working.waitFor();
    const heights = working.locator('[data-testid^="height-"]');
    const readings = working.locator('[data-testid^="reading-"]');
    const [ofHeights, ofReadings] = [await heights.count(), await readings.count()];
    expect(ofHeights).toBeGreaterThan(2);
    expect(ofReadings).toBe(readOnce(demoSetups[kind]).events.length);
    // The second one: the first may be on its reference by definition.
    await heights.nth(1).click();
    await page
      .getByTestId('why')
      .filter({ hasText: /readings make (the|how)/ })
      .waitFor();
    expect(await working.locator('[style*="background"]').count()).toBeGreaterThan(1);
    await readings.last().click();
    await page
      .getByTestId('why')
      .filter({ hasText: /That is its residual|Nothing checks/ })
      .waitFor();
  },
  60_000,
);

test('practice: a fault of one’s choice on a kind of one’s choice is planted, guessed, and told', async () => {
  daemon = await DaemonProcess.start('demo', '--folder', folder, '--pace', '100');
  await page.goto(daemon.url);
  await page.getByTestId('practise').click();
  await page.locator('[name="practice-kind"]').selectOption('slide');
  for (const fault of ['nothing', 'drift', 'skipped', 'doubled', 'moved', 'inverted']) {
    await page.locator(`[name="fault-${fault}"]`).uncheck();
  }
  await page.getByTestId('practise-begin').click();
  await page.getByTestId('sim-walk').click();
  await page.locator('[data-testid="finish"].main').waitFor({ timeout: 100_000 });
  await page.keyboard.press('f');
  await page.getByTestId('finish-yes').click();
  await page.getByTestId('guess-moved').click();
  const told = await page.getByTestId('practice-told').textContent();
  expect(told).toContain('It was: A chip underneath');
  expect(told).toMatch(/It was at T\d\./);
  expect(told).toMatch(/It could be seen from reading \d+ of 28 on/);
  // The recording keeps it, so that it can be practised on again.
  const [{ id }] = await (await page.request.get(new URL('api/recordings', daemon.url).href)).json();
  const { header } = await readRecording(join(folder, `${id}.jsonl`));
  expect(header.simulated).toMatchObject({ planted: 'chip' });
}, 150_000);

test('a lesson beside a recording with a mistake in it is refused by the place of the mistake', async () => {
  daemon = await DaemonProcess.start('serve', '--folder', folder);
  await page.goto(daemon.url);
  const lesson = JSON.parse(await readFile('recordings/lessons/chip.lesson.json', 'utf8'));
  lesson.moments[0].arrows = [{ to: 'Q9', says: 'nowhere' }];
  await page.getByTestId('open-file').setInputFiles([
    { name: 'chip.jsonl', mimeType: '', buffer: await readFile('recordings/lessons/chip.jsonl') },
    { name: 'chip.lesson.json', mimeType: '', buffer: Buffer.from(JSON.stringify(lesson)) },
  ]);
  await page
    .getByTestId('refusal')
    .filter({ hasText: 'moments[0].arrows[0].to: Q9 is no station' })
    .waitFor();
});

test('what is played stands above its player, and neither is scrolled to, on a desktop and on tablets', async () => {
  daemon = await DaemonProcess.start('serve', '--folder', folder);
  for (const [width, height] of [
    [1280, 800],
    [1024, 768],
    [768, 1024],
  ] as const) {
    await page.setViewportSize({ width, height });
    for (const id of ['chip', 'twist-by-wear', 'plate-closures']) {
      await page.goto('about:blank');
      await page.goto(new URL(`#lesson=${id}`, daemon.url).href);
      await page.getByTestId('lesson-begin').waitFor();
      for (const key of ['ArrowRight', 'End']) {
        await page.keyboard.press(key);
        const room = await page.evaluate(() => {
          const bottom = (selector: string) =>
            document.querySelector(selector)!.getBoundingClientRect().bottom;
          return {
            below: document.documentElement.scrollHeight - innerHeight,
            beside: document.documentElement.scrollWidth - innerWidth,
            player: innerHeight - bottom('.player'),
            words: bottom('.lesson') - bottom('.sheet'),
          };
        });
        const where = `${id} at ${width} × ${height}, ${JSON.stringify(room)}`;
        expect(room.below, where).toBeLessThanOrEqual(0);
        expect(room.beside, where).toBeLessThanOrEqual(0);
        expect(room.player, where).toBeGreaterThanOrEqual(0);
        expect(room.words, where).toBeLessThanOrEqual(0);
      }
    }
  }
}, 60_000);
