import type { Page } from 'playwright-core';
import { expect, onTestFinished, test } from 'vitest';
import { openBrowser } from './tools/browser.ts';
import { DaemonProcess } from './tools/daemon-process.ts';
import { arrowTo, tabTo, typeOver } from './tools/keys.ts';
import { PageClient } from './tools/page-client.ts';
import { testFolder } from './tools/test-folder.ts';

/**
 * Constructed: the axis rises 20 µm over the bar and leans away by 10 µm; the bar itself is out by 6 µm in both
 * planes, which the half turn tells apart.
 */
const readsUm: Readonly<Record<string, readonly number[]>> = {
  'top as it stands': [0, 13, 26],
  'top turned': [0, 7, 14],
  'side as it stands': [0, -8, -16],
  'side turned': [0, -2, -4],
};

test('a test bar from an empty page to its result, with no mouse', async () => {
  const daemon = await DaemonProcess.start('serve', '--folder', testFolder());
  const browser = await openBrowser();
  const observer = await PageClient.open(daemon.url);
  onTestFinished(async () => {
    observer.close();
    await browser.close();
    await daemon.stop();
  });
  const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  await page.goto(daemon.url);

  await tabTo(page, '[data-testid="set-up"]');
  await page.keyboard.press('Enter');
  await tabTo(page, '[name="kind"]');
  await arrowTo(page, '[data-testid="kind-bar"]');
  await typeOver(page, '[name="part"]', 'Lathe 3');
  await typeOver(page, '[name="surface"]', 'spindle to carriage travel');
  await typeOver(page, '[name="length"]', '300');
  await typeOver(page, '[name="stations"]', '3');
  await tabTo(page, '[name="source"]');
  await page.keyboard.press('ArrowDown');
  await typeOver(page, '[name="name"]', 'indicator');
  await tabTo(page, '[data-testid="start"]');
  await page.keyboard.press('Enter');
  await observer.until(() => observer.session !== null);
  for (let next = observer.session!.next; next; next = observer.session!.next) {
    const { run, at } = next;
    await says(page, at[0]!);
    await tabTo(page, '[data-testid="typed"]');
    const before = observer.session!.counted.size;
    await page.keyboard.type(String(readsUm[run]![Number(at[0]!.slice(1))]));
    await page.keyboard.press('Enter');
    await observer.until(() => observer.session!.counted.size > before);
    // The field follows behind; after the last reading it is gone.
    await page.waitForFunction(
      () => !document.querySelector<HTMLInputElement>('[data-testid="typed"]')?.value,
    );
  }
  await page.locator('[data-testid="finish"].main').waitFor();
  await page.keyboard.press('f');
  await tabTo(page, '[data-testid="finish-yes"]');
  await page.keyboard.press('Enter');
  await page.locator('[data-testid="root"][data-view="result"]').waitFor();
  expect(await page.getByTestId('sentence').textContent()).toContain(
    'points up 20.0 µm over 300 mm, and points away from the indicator 10.0 µm over 300 mm',
  );
}, 60_000);

const says = (page: Page, words: string) => page.getByTestId('sentence').filter({ hasText: words }).waitFor();
