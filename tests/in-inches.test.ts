import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { demoSetups } from '../shared/session/demo-setups.ts';
import { openBrowser } from './tools/browser.ts';
import { DaemonProcess } from './tools/daemon-process.ts';

describe('who measures lengths in inches', () => {
  let folder = '';
  let daemon: DaemonProcess;
  let browser: Browser;
  let page: Page;

  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'wayscribe-'));
    daemon = await DaemonProcess.start('demo', '--folder', folder);
    browser = await openBrowser();
    page = await browser.newPage({ locale: 'en-US', reducedMotion: 'reduce' });
    await page.goto(daemon.url);
  });
  afterAll(async () => {
    await browser?.close();
    await daemon?.stop();
    await rm(folder, { recursive: true, force: true });
  });

  /** Texts that tell metal in µm; an instrument reads in the unit that is its own, and is left out. */
  const metric = () =>
    page.evaluate(() => {
      const found: string[] = [];
      const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
      for (let node = walk.nextNode(); node; node = walk.nextNode()) {
        const own = node.parentElement?.closest('[data-testid="live"], .live, .typed') !== null;
        if (!own && /µm|\d mm/.test(node.textContent ?? '')) found.push(node.textContent ?? '');
      }
      return found;
    });

  test.each(Object.keys(demoSetups))(
    'has the heights of a %s in inches too, in every part of the page',
    async (kind) => {
      await page.getByTestId('set-up').click();
      await page.locator(`[name="kind"][value="${kind}"]`).check({ force: true });
      await page.locator('[name="lengthUnit"]').selectOption('in');
      await page.getByTestId('start').click();
      await page.locator('[data-testid="root"][data-view="survey"]').waitFor();
      await page.getByTestId('sim-walk').click();
      await page.waitForFunction(() => document.querySelectorAll('tr[data-station]').length >= 3);
      expect.soft(await metric(), 'survey').toEqual([]);
      await page.keyboard.press('f');
      await page.getByTestId('finish-yes').click();
      await page.locator('[data-testid="root"][data-view="result"]').waitFor();
      expect.soft(await metric(), 'result').toEqual([]);
      await page.keyboard.press('w');
      await page.locator('section[data-testid="working"]').waitFor();
      expect.soft(await metric(), 'working').toEqual([]);
      await page.keyboard.press('x');
      await page.getByTestId('set-up').waitFor();
    },
  );
});
