import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { demoSetup } from '../daemon/simulate/scenario.ts';
import { setupSchema } from '../shared/session/setup.ts';
import { openBrowser } from './tools/browser.ts';
import { DaemonProcess } from './tools/daemon-process.ts';
import { PageClient } from './tools/page-client.ts';
import { testFolder } from './tools/test-folder.ts';

let browser: Browser;
let daemon: DaemonProcess;

beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());
afterEach(() => daemon.stop());

const rootOf = (page: Page) => page.locator('[data-testid=root]');

async function openKept(url: string): Promise<Page> {
  const page = await (await browser.newContext({ viewport: { width: 1280, height: 800 } })).newPage();
  const wrong: string[] = [];
  page.on('console', (message) => message.type() === 'error' && wrong.push(message.text()));
  await page.goto(url);
  await page.evaluate(() => navigator.serviceWorker.ready);
  // The worker is strict too, and nothing of it is against the policy of the page.
  expect(wrong).toEqual([]);
  return page;
}

test('the page opens without the daemon, and goes on by itself when that is back', async () => {
  const folder = testFolder();
  daemon = await DaemonProcess.start('demo', '--folder', folder);
  const { port } = new URL(daemon.url);
  const page = await openKept(daemon.url);
  const hand = await PageClient.open(daemon.url);
  expect(await hand.ask({ do: 'start', setup: setupSchema.parse({ ...demoSetup, stations: 6 }) })).toBeNull();
  expect(await hand.ask({ do: 'sim-walk', on: true })).toBeNull();
  await hand.until(() => hand.session!.counted.size === 2);
  await rootOf(page).and(page.locator('[data-view=survey]')).waitFor();
  hand.close();
  await daemon.stop('SIGKILL');

  await page.reload();
  await page.getByText('The tool does not answer').waitFor();
  const fonts = await page.evaluate(async () => {
    await document.fonts.load('16px B612');
    return document.fonts.check('16px B612');
  });
  expect(fonts, 'the fonts are kept too').toBe(true);

  daemon = await DaemonProcess.start('demo', '--folder', folder, '--port', port);
  await rootOf(page).and(page.locator('[data-view=survey][data-link=open]')).waitFor();
  const again = await PageClient.open(daemon.url);
  await page.waitForFunction(
    (seq) => Number(document.querySelector('[data-testid=root]')?.getAttribute('data-seq')) >= seq,
    again.events.at(-1)!.seq,
  );
  again.close();
});

test('a page that stayed open through a restart of the daemon shows every event', async () => {
  const folder = testFolder();
  daemon = await DaemonProcess.start('demo', '--folder', folder);
  const { port } = new URL(daemon.url);
  const page = await openKept(daemon.url);
  let hand = await PageClient.open(daemon.url);
  expect(await hand.ask({ do: 'start', setup: setupSchema.parse({ ...demoSetup, stations: 6 }) })).toBeNull();
  await daemon.stop('SIGKILL');
  await page.locator('[data-testid=root][data-link=lost]').waitFor();
  daemon = await DaemonProcess.start('demo', '--folder', folder, '--port', port);
  hand = await PageClient.open(daemon.url);
  expect(await hand.ask({ do: 'sim-walk', on: true })).toBeNull();
  await hand.until(() => hand.session!.counted.size === 5);
  const { seq } = hand.session!;
  await page.waitForFunction(
    (wanted) => Number(document.querySelector('[data-testid=root]')?.getAttribute('data-seq')) >= wanted,
    seq,
  );
  hand.close();
});

test('it can be installed: a browser finds nothing wrong with its manifest', async () => {
  daemon = await DaemonProcess.start('demo', '--folder', testFolder());
  const page = await openKept(daemon.url);
  const devtools = await page.context().newCDPSession(page);
  const { errors, data } = await devtools.send('Page.getAppManifest');
  expect(errors).toEqual([]);
  expect(JSON.parse(data!)).toMatchObject({ name: 'Wayscribe', display: 'standalone' });
  const { installabilityErrors } = await devtools.send('Page.getInstallabilityErrors');
  // A private window keeps no programs; nothing else is in the way.
  expect(installabilityErrors.map(({ errorId }) => errorId).filter((id) => id !== 'in-incognito')).toEqual(
    [],
  );
});

test('nothing that was measured is kept by the browser', async () => {
  daemon = await DaemonProcess.start('demo', '--folder', testFolder());
  const page = await openKept(daemon.url);
  const kept = await page.evaluate(async () => {
    const caches_ = await Promise.all((await caches.keys()).map((name) => caches.open(name)));
    const requests = await Promise.all(caches_.map((cache) => cache.keys()));
    return requests.flat().map(({ url }) => new URL(url).pathname);
  });
  expect(kept).toContain('/');
  expect(kept.filter((path) => path.startsWith('/api') || path === '/ws')).toEqual([]);
});
