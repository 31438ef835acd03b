import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { demoSetups } from '../shared/session/demo-setups.ts';
import { checkedPage, expectClean } from './tools/accessibility.ts';
import { openBrowser } from './tools/browser.ts';
import { DaemonProcess } from './tools/daemon-process.ts';
import { PageClient } from './tools/page-client.ts';
import { sharedFolder } from './tools/test-folder.ts';

/** Screens on which a survey is walked: a small computer, a tablet lying, a tablet standing. */
const screens = [
  { width: 1280, height: 800 },
  { width: 1024, height: 768 },
  { width: 768, height: 1024 },
];

const folder = sharedFolder();
let daemon: DaemonProcess;
let browser: Browser;
let page: Page;
let client: PageClient;

beforeAll(async () => {
  daemon = await DaemonProcess.start('demo', '--folder', folder, '--pace', '50');
  browser = await openBrowser();
  page = await checkedPage(browser, daemon.url);
  client = await PageClient.open(daemon.url);
});
afterAll(async () => {
  client?.close();
  await browser?.close();
  await daemon?.stop();
});

test.each(Object.keys(demoSetups))(
  'a %s, under way and finished: seen whole, and axe-core finds no fault',
  async (kind) => {
    expect(await client.ask({ do: 'start', setup: demoSetups[kind as keyof typeof demoSetups] })).toBeNull();
    await client.until(() => client.session?.setup.kind === kind);
    const some = Math.min(4, Math.ceil(client.session!.placements.length / 2));
    await client.ask({ do: 'sim-walk', on: true });
    await client.until(() => client.session!.counted.size >= some || client.session!.next === null);
    await client.ask({ do: 'sim-walk', on: false });
    await drawnUpTo(client.session!.seq);
    for (const screen of screens) {
      await page.setViewportSize(screen);
      const main = await page.locator('.controls .main').first().boundingBox();
      expect(main!.y + main!.height, `the main control on ${screen.width}`).toBeLessThanOrEqual(
        screen.height,
      );
      const below = await page.evaluate(() => document.documentElement.scrollHeight - window.innerHeight);
      if (screen.width === 1280)
        expect(below, 'px below the window of a small computer').toBeLessThanOrEqual(0);
    }
    await expectClean(page);
    expect(await client.ask({ do: 'finish' })).toBeNull();
    await page.locator('[data-testid="root"][data-view="result"]').waitFor();
    await expectClean(page);
    expect(await client.ask({ do: 'leave' })).toBeNull();
    await page.locator('[data-testid="root"][data-view="start"]').waitFor();
  },
);

const drawnUpTo = (seq: number) =>
  page.waitForFunction(
    (wanted) => Number(document.querySelector<HTMLElement>('[data-testid="root"]')?.dataset.seq) >= wanted,
    seq,
  );
