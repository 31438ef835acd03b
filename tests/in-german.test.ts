import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { demoSetups } from '../shared/session/demo-setups.ts';
import { de } from '../web/words/languages/de/de.ts';
import { openBrowser } from './tools/browser.ts';
import { DaemonProcess } from './tools/daemon-process.ts';
import { englishOnly, foreignOn } from './tools/foreign-words.ts';

/** What people wrote is in their language: all texts of the demo's set-ups and of the job that ships. */
const written = (value: unknown): string[] =>
  typeof value === 'string'
    ? [value]
    : typeof value === 'object' && value !== null
      ? Object.values(value).flatMap(written)
      : [];

describe('a browser that asks for German', () => {
  let folder = '';
  let daemon: DaemonProcess;
  let browser: Browser;
  let page: Page;
  const english = englishOnly(de);
  /** Names of the demo that are words of the page as well are said in German. */
  let names = [...written(demoSetups), 'level L5', 'Bench lathe 12, bed'];

  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'wayscribe-'));
    const rebuild = join(import.meta.dirname, '..', 'recordings', 'rebuild');
    const documents = (await readdir(rebuild)).filter((file) => file.endsWith('.json'));
    for (const file of documents) {
      names = [...names, ...written(JSON.parse(await readFile(join(rebuild, file), 'utf8')))];
    }
    names = names.filter((name) => !(name in de) && name.length > 3);
    daemon = await DaemonProcess.start('demo', '--folder', folder);
    browser = await openBrowser();
    page = await browser.newPage({
      locale: 'de-DE',
      reducedMotion: 'reduce',
      viewport: { width: 1280, height: 800 },
    });
    await page.goto(daemon.url);
  });
  afterAll(async () => {
    await browser?.close();
    await daemon?.stop();
    await rm(folder, { recursive: true, force: true });
  });

  /** No English word is left on the sheet, and nothing runs out of it sideways. */
  async function expectGerman(where: string): Promise<void> {
    expect.soft(await foreignOn(page, english, names), where).toEqual([]);
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect.soft(wide, `${where} scrolls sideways`).toBeLessThanOrEqual(0);
  }

  test('the check knows English when it sees it', () => {
    expect(english.size).toBeGreaterThan(500);
    expect(english.has('reading')).toBe(true);
    expect(english.has('ablesung')).toBe(false);
  });

  test('start and its recordings', async () => {
    await page.getByTestId('set-up').waitFor();
    expect(await page.evaluate(() => document.documentElement.lang)).toBe('de');
    await expectGerman('start');
  });

  test('set-up of each kind, with fields that are wrong', async () => {
    await page.getByTestId('set-up').click();
    for (const kind of Object.keys(demoSetups)) {
      await page.locator(`[name="kind"][value="${kind}"]`).check({ force: true });
      await page.locator('[name="part"]').fill('');
      await page.getByTestId('start').click();
      await page.locator('[aria-invalid="true"]').first().waitFor();
      await expectGerman(`set-up of a ${kind}`);
    }
    await page.keyboard.press('Escape');
  });

  test('a survey of each kind, its questions, its result and its working', async () => {
    for (const kind of Object.keys(demoSetups)) {
      await page.getByTestId(kind === 'way' ? 'demo' : `demo-${kind}`).click();
      await page.waitForFunction(() => document.querySelectorAll('tr[data-station]').length >= 3);
      await page.getByTestId('undo').waitFor();
      await expectGerman(`survey of a ${kind}`);
      for (const [key, testId] of [
        ['z', 'reasons'],
        ['s', 'reasons'],
        ['n', 'note-text'],
        ['r', 'place-question'],
        ['?', 'help-panel'],
      ] as const) {
        await page.keyboard.press(key);
        await page.getByTestId(testId).waitFor();
        await expectGerman(`${key} in the survey of a ${kind}`);
        await page.keyboard.press('Escape');
        await page.getByTestId(testId).waitFor({ state: 'detached' });
      }
      await page.keyboard.press('f');
      await page.getByTestId('finish-yes').waitFor();
      await expectGerman(`finishing a ${kind}`);
      await page.getByTestId('finish-yes').click();
      await page.locator('[data-testid="root"][data-view="result"]').waitFor();
      await expectGerman(`result of a ${kind}`);
      await page.keyboard.press('w');
      await page.locator('section[data-testid="working"]').waitFor();
      await expectGerman(`working of a ${kind}`);
      await page.keyboard.press('x');
      await page.getByTestId('set-up').waitFor();
    }
  }, 300_000);

  test('a job: every sheet of it, and its questions', async () => {
    await page.getByTestId('open-job-rebuild').click();
    await page.getByTestId('rounds').waitFor();
    for (const [key, name] of Object.entries({ b: 'compare', s: 'plan', i: 'blue', o: 'papers' })) {
      await expectGerman(`before ${name}`);
      await page.keyboard.press(key);
      await page.locator(`main[data-sheet="${name}"]`).waitFor();
    }
    await expectGerman('papers');
    for (const [key, name] of Object.entries({ l: 'passes', p: 'print', a: 'surface' })) {
      await page.keyboard.press(key);
      await page.locator(`main[data-sheet="${name}"]`).waitFor();
      await expectGerman(name);
      await page.keyboard.press('Escape');
      await page.locator('main[data-sheet="papers"]').waitFor();
    }
    await page.keyboard.press('x');
    await page.getByTestId('set-up').waitFor();
  });

  test('a lesson and its replay: beginning, question, working, writing, comparing', async () => {
    await page.getByTestId('lesson-chip').click();
    await page.getByTestId('lesson-begin').waitFor();
    await expectGerman('a lesson begins');
    for (let n = 0; n < 40 && !(await page.getByTestId('lesson-asks').isVisible()); n += 1) {
      await page.keyboard.press('ArrowRight');
    }
    await page.getByTestId('lesson-asks').waitFor();
    await expectGerman('a question of a lesson');
    await page.keyboard.press('w');
    await page.getByTestId('height-F4').first().click();
    await expectGerman('the working of a replay');
    await page.keyboard.press('l');
    await page.getByTestId('lesson-editor').waitFor();
    await expectGerman('a lesson being written');
    await page.keyboard.press('o');
    await page.getByTestId('compare').waitFor();
    await expectGerman('comparing');
  });

  test('the language is switched on the page, is remembered, and numbers follow', async () => {
    await page.goto(daemon.url);
    await page.getByTestId('language').click();
    await page.getByText('What is to be measured?').or(page.getByText('Walk a worn bed')).first().waitFor();
    await page.reload();
    await page.getByTestId('set-up').getByText('Set up a survey').waitFor();
    expect(await page.evaluate(() => document.documentElement.lang)).toBe('en');
    await page.getByTestId('language').click();
    await page.getByTestId('set-up').getByText('Messung einrichten').waitFor();
  });
});
