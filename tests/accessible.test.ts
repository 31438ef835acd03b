import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { checkedPage, expectClean as clean } from './tools/accessibility.ts';
import { openBrowser } from './tools/browser.ts';
import { DaemonProcess } from './tools/daemon-process.ts';

describe('the page, by axe-core, on paper and on slate, on a desktop and on a tablet', () => {
  let folder = '';
  let daemon: DaemonProcess;
  let browser: Browser;
  let page: Page;

  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'wayscribe-'));
    daemon = await DaemonProcess.start('demo', '--folder', folder);
    browser = await openBrowser();
    page = await checkedPage(browser, daemon.url);
  });
  afterAll(async () => {
    await browser?.close();
    await daemon?.stop();
    await rm(folder, { recursive: true, force: true });
  });

  const expectClean = () => clean(page);

  test('start', async () => {
    await page.getByTestId('set-up').waitFor();
    await expectClean();
  });

  test('a job: every sheet of it, and a question', async () => {
    await page.getByTestId('open-job-rebuild').click();
    await page.getByTestId('rounds').waitFor();
    for (const [key, name] of Object.entries({ b: 'compare', s: 'plan', i: 'blue', o: 'papers' })) {
      await expectClean();
      await page.keyboard.press(key);
      await page.locator(`main[data-sheet="${name}"]`).waitFor();
    }
    await expectClean();
    for (const [key, name] of Object.entries({ l: 'passes', p: 'print', a: 'surface' })) {
      await page.keyboard.press(key);
      await page.locator(`main[data-sheet="${name}"]`).waitFor();
      await expectClean();
      await page.keyboard.press('Escape');
      await page.locator('main[data-sheet="papers"]').waitFor();
    }
    await page.keyboard.press('x');
  });

  test('set-up, with a field that is wrong', async () => {
    await page.getByTestId('set-up').click();
    await page.locator('[name="part"]').fill('');
    await page.getByTestId('start').click();
    await page.locator('[aria-invalid="true"]').first().waitFor();
    await expectClean();
    await page.keyboard.press('Escape');
  });

  test('before the first reading, and the help with its keys, signs and cautions', async () => {
    await page.getByTestId('demo-by-hand').click();
    await page.getByTestId('beforehand').waitFor();
    await expectClean();
    await page.keyboard.press('?');
    await page.getByTestId('help-cautions').waitFor();
    await expectClean();
    // Behind the help no key does anything.
    await page.keyboard.press('f');
    await page.keyboard.press('Escape');
    await page.getByTestId('help-panel').waitFor({ state: 'detached' });
    expect(await page.getByTestId('finish-question').count()).toBe(0);
    await page.getByTestId('beforehand-away').click();
    await page.getByTestId('beforehand').waitFor({ state: 'detached' });
    await page.keyboard.press('f');
    await page.getByTestId('put-aside').click();
    await page.getByTestId('set-up').waitFor();
  });

  test('survey, half way', async () => {
    await page.getByTestId('demo').click();
    await page.waitForFunction(() => document.querySelectorAll('tr[data-station]').length >= 4);
    await expectClean();
  });

  test('the question why a take is undone', async () => {
    await page.keyboard.press('z');
    await page.getByTestId('reasons').waitFor();
    await expectClean();
    await page.keyboard.press('Escape');
  });

  test('result and its working', async () => {
    await page.keyboard.press('f');
    await page.getByTestId('finish-yes').click();
    await page.locator('[data-testid="root"][data-view="result"]').waitFor();
    await expectClean();
    await page.keyboard.press('w');
    await page.locator('section[data-testid="working"]').waitFor();
    await expectClean();
  });

  test('a lesson: its beginning, a question, the working of a replay, a lesson being written', async () => {
    await page.keyboard.press('x');
    await page.getByTestId('lesson-chip').click();
    await page.getByTestId('lesson-begin').waitFor();
    await expectClean();
    for (let n = 0; n < 40 && !(await page.getByTestId('lesson-asks').isVisible()); n += 1) {
      await page.keyboard.press('ArrowRight');
    }
    await page.getByTestId('lesson-asks').waitFor();
    await expectClean();
    await page.keyboard.press('w');
    await page.getByTestId('height-F4').first().click();
    await expectClean();
    await page.keyboard.press('l');
    await page.getByTestId('lesson-editor').waitFor();
    await expectClean();
    await page.keyboard.press('o');
    await page.getByTestId('compare').waitFor();
    await expectClean();
  });
});
