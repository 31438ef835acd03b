import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, onTestFinished, test } from 'vitest';
import { demoSetups } from '../../daemon/simulate/scenario.ts';
import { reduce } from '../../shared/reduce.ts';
import type { Result } from '../../shared/sheet/result.ts';
import { parseSheet } from '../../shared/sheet/sheet.ts';
import { openBrowser } from '../tools/browser.ts';
import { DaemonProcess } from '../tools/daemon-process.ts';
import { bedSetup, madeUpJob, plateSetup } from '../tools/made-up-job.ts';
import { testFolder } from '../tools/test-folder.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser?.close());

test.each([
  ['way', demoSetups.way, { straightness: 1 }],
  ['bed', bedSetup, { 'front.straightness': 1, 'rear.straightness': 1 }],
  ['plate', plateSetup, { flatness: 1 }],
] as const)(
  'the plan of a %s and the print to expect are those of the core for the exported sheet',
  async (_, setup, limits) => {
    const folder = testFolder();
    await madeUpJob(join(folder, 'work'), setup, limits, 'as found');
    const daemon = await DaemonProcess.start('serve', '--folder', folder);
    const page = await browser.newPage({ viewport: { width: 1400, height: 1100 } });
    onTestFinished(async () => {
      await page.close();
      await daemon.stop();
    });
    await page.goto(daemon.url);
    await page.getByTestId('open-job-work').click();
    await page.getByTestId('rounds').waitFor();
    await page.keyboard.press('o');
    const href = await page.locator('a[href$="sheet.json"]').first().getAttribute('href');
    const { metal } = reduce(
      parseSheet(await (await page.request.get(new URL(href!, daemon.url).href)).text()),
    );
    expect(Object.values(metal).some(({ plan }) => plan.length > 0)).toBe(true);

    await page.keyboard.press('s');
    await page.getByTestId('plan').waitFor();
    const more = page.locator('.passes-room button[aria-expanded="false"]');
    while ((await more.count()) > 0) await more.first().click();
    expect(await page.locator('.passes > li .no').allTextContents()).toEqual(
      Object.values(metal).flatMap(({ plan }) => plan.map(({ pass }) => `Pass ${pass}`)),
    );
    expect(await passesDrawn(page)).toEqual(passesOf(metal));

    await page.keyboard.press('i');
    await page.getByTestId('blue').waitFor();
    expect(await inked(page)).toEqual(
      Object.values(metal)
        .flatMap(({ contact }) => contact.inked)
        .sort(),
    );
  },
);

/** Passes at every station, as the strips and the plan of a plate say them. */
async function passesDrawn(page: Page): Promise<Record<string, number>> {
  const labels = await page
    .locator('.pass-strip')
    .evaluateAll((all) => all.map((one) => one.getAttribute('aria-label')!));
  const spots = await page
    .locator('.station-plan g[data-station]')
    .evaluateAll((all) =>
      all.map((one) => [one.getAttribute('data-station')!, Number(one.getAttribute('data-text'))] as const),
    );
  const words = labels.flatMap((label) => label.replace(/^[^:]*: /, '').split(', '));
  const said = words.map((text) => {
    const [name, ...rest] = text.split(' ');
    return [name!, rest[0] === 'leave' ? 0 : Number(rest[0])] as const;
  });
  return Object.fromEntries([...said, ...spots]);
}

/** What is less than its own doubt is left, or drawn with its number and hatched. */
function passesOf(metal: Result['metal']): Record<string, number> {
  const stations = Object.values(metal).flatMap((one) => Object.entries(one.stations));
  const onPlan = metal.plane !== undefined;
  return Object.fromEntries(
    stations.map(([name, { passes, worthAStroke }]) => [name, worthAStroke || onPlan ? passes : 0]),
  );
}

/** Stations that are drawn as inked by the numbers. */
async function inked(page: Page): Promise<string[]> {
  const rows = await page
    .locator('.ink-rows')
    .evaluateAll((all) => all.map((one) => one.getAttribute('aria-label')!));
  const spots = await page
    .locator('.station-plan')
    .first()
    .locator('g[data-ink="1"]')
    .evaluateAll((all) => all.map((one) => one.getAttribute('data-station')!))
    .catch(() => []);
  const said = rows.flatMap((row) => row.split('; ')).filter((text) => text.includes('numbers +'));
  return [...said.map((text) => text.split(' ')[0]!), ...spots].sort();
}
