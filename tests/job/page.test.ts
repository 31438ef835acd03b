import { mkdtempSync, rmSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { JobFolder } from '../../daemon/job/job-folder.ts';
import { verifyJob } from '../../daemon/job/verify-job.ts';
import { openBrowser } from '../tools/browser.ts';
import { DaemonProcess } from '../tools/daemon-process.ts';

/** The smallest photograph there is: one pixel. Constructed. */
const pixel = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAQAAAC1HAwCAAAAC0lEQVR42mNk+A8AAQUBAScY42YAAAAASUVORK5CYII=',
  'base64',
);

describe('the job of the demo, from the first look to the verified report', () => {
  const folder = mkdtempSync(join(tmpdir(), 'wayscribe-test-'));
  let daemon: DaemonProcess;
  let browser: Browser;
  let page: Page;
  beforeAll(async () => {
    daemon = await DaemonProcess.start('demo', '--folder', folder);
    browser = await openBrowser();
    page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
    await page.goto(daemon.url);
  });
  afterAll(async () => {
    await browser?.close();
    await daemon?.stop();
    rmSync(folder, { recursive: true, force: true });
  });

  const sheet = (name: string) => page.locator(`main[data-sheet="${name}"]`);
  const press = async (key: string, name: string) => {
    await page.keyboard.press(key);
    await sheet(name).waitFor();
  };

  test('the start page shows it first, and it opens with its surfaces, limits and verdict', async () => {
    await page.getByTestId('open-job-rebuild').click();
    await page.getByTestId('job-figure').waitFor();
    await page.getByTestId('surface').filter({ hasText: 'Front way' }).click();
    await page.locator('main[data-surface="front way"]').waitFor();
    expect(await page.getByTestId('job-verdict').textContent()).toBe('within the allowed 10 µm');
    expect(await page.getByTestId('limits').textContent()).toContain('Agreed with the customer, 27 February');
    expect(await page.getByTestId('convergence').textContent()).toBe('It is within its limit.');
    expect(await page.getByTestId('rounds').locator('tbody tr').count()).toBe(5);
    expect(await page.getByTestId('rounds').textContent()).toContain('39.9');
  });

  test('before and after on one scale, with what is the same and what was not alike', async () => {
    await press('b', 'compare');
    const same = page.locator('tr[data-station][data-same="true"]');
    expect(await page.locator('tr[data-station]').count()).toBe(13);
    expect(await same.count()).toBeLessThan(6);
    expect(await page.getByTestId('unlike').textContent()).toContain('first shift, then second shift');
    const axis = () => page.locator('.line-chart > g > text').allTextContents();
    const before = await axis();
    expect(await page.locator('tr[data-station="F4"] td').last().textContent()).toMatch(/^3\d\.\d up$/);
    await page.getByTestId('round-slider').fill('1');
    await page.waitForFunction(
      () => document.querySelector('[data-testid="compared-with"]')?.textContent === 'in work 1',
    );
    expect(await axis()).toEqual(before);
    const worst = page.locator('tr[data-station="F4"] td').last();
    expect(Number.parseFloat((await worst.textContent()) ?? '')).toBeLessThan(20);
  });

  test('passes that were taken make the surface, and what was made from it, stand to be measured', async () => {
    await press('l', 'passes');
    await page.getByLabel('Stations of pass 1').fill('f0-F2, F9');
    await page.getByTestId('job-answer').click();
    await page.getByTestId('notice').waitFor();
    expect(await page.getByTestId('notice').textContent()).toContain('1 pass was scraped since');
    const tailstock = page.getByTestId('surface').filter({ hasText: 'Tailstock way' });
    expect(await tailstock.getAttribute('data-recheck')).toBe('true');
  });

  test('the next round is measured as the first was, and is accepted into the job', {
    timeout: 240_000,
  }, async () => {
    await press('n', 'next-round');
    expect(await page.getByTestId('next-unlike').textContent()).toContain('19.6 °C, then not noted');
    await page.locator('[name="partC"]').fill('19,7');
    await page.locator('[name="airC"]').fill('20.0');
    await page.waitForFunction(() =>
      document.querySelector('[data-testid="next-unlike"]')?.textContent?.includes('comparable as it is'),
    );
    await page.getByTestId('job-answer').click();
    await page.locator('[data-testid="root"][data-view="survey"]').waitFor();
    await page.getByTestId('sim-walk').click();
    await page.locator('tr[data-station="F12"]').waitFor({ state: 'attached', timeout: 200_000 });
    await page.keyboard.press('f');
    await page.getByTestId('finish-yes').click();
    await page.getByTestId('keep-in-job').click();
    await page.locator('[data-testid="root"][data-view="job"]').waitFor();
    await page.getByTestId('rounds').waitFor();
    const row = page.getByTestId('rounds').locator('tbody tr').last();
    expect(await row.textContent()).toContain('in work 4');
  });

  test('the plan is shown pass by pass, and prints large', async () => {
    await press('s', 'plan');
    await page.getByTestId('plan').waitFor();
    expect(await page.locator('.pass-strip').count()).toBe(1);
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('.made-from').isVisible()).toBe(false);
    await page.emulateMedia({ media: 'screen' });
  });

  test('a print with its photograph is laid beside the numbers', async () => {
    await press('i', 'blue');
    await press('p', 'print');
    for (const name of ['F2', 'F5']) await page.getByTestId(`print-${name}`).click();
    await page.getByLabel('Points per square inch at F5').fill('14');
    await page.locator('[name="against"]').fill('camelback straightedge 2');
    await page.locator('[name="turns"]').fill('520 1270');
    await page
      .getByTestId('photo')
      .setInputFiles({ name: 'print.png', mimeType: 'image/png', buffer: pixel });
    await page.getByTestId('job-answer').click();
    const photo = page.getByTestId('print-photo');
    await photo.waitFor();
    await page.waitForFunction(
      () => (document.querySelector('[data-testid="print-photo"]') as HTMLImageElement).naturalWidth === 1,
    );
    expect(await page.getByTestId('blue-verdict').getAttribute('data-agree')).toBe('false');
    expect(await page.getByTestId('blue-verdict').textContent()).toContain('Neither overrules the other');
    expect(await page.getByTestId('blue').textContent()).toContain('as a flat one does');
  });

  test('what was changed elsewhere is drawn, and that is said; an entry is withdrawn, and stays', async () => {
    await press('o', 'papers');
    const elsewhere = await JobFolder.open(join(folder, 'rebuild'));
    const at = '2026-03-20T08:00:00Z';
    await elsewhere.add({ at, by: 'the other shift', change: 'note', text: 'written elsewhere' });
    const entry = page.getByText('written elsewhere').first();
    await entry.waitFor();
    expect(await page.getByTestId('notice').textContent()).toContain('the other shift has changed this job');
    await page.getByTestId('changes-fold').click();
    const { no } = elsewhere.job.changes.at(-1)!;
    const line = page.locator(`[data-change="${no}"]`);
    await line.getByRole('button', { name: 'Withdraw' }).click();
    await page.locator('[name="withdraw-reason"]').fill('the wrong job');
    await page.getByTestId('withdraw').click();
    await line.getByText('withdrawn by').waitFor();
    const { job } = await JobFolder.open(join(folder, 'rebuild'));
    expect(job.changes.at(-1)).toMatchObject({ change: 'withdrawn', of: no, reason: 'the wrong job' });
    expect(job.notes.some(({ text }) => text === 'written elsewhere')).toBe(false);
  });

  test('the report opens by itself and is made by the job; everything is verified', async () => {
    await press('o', 'papers');
    const [report] = await Promise.all([
      page.context().waitForEvent('page'),
      page.getByTestId('job-report').click(),
    ]);
    await report.waitForLoadState();
    expect(await report.locator('body').textContent()).toContain('camelback straightedge 2');
    expect(await report.evaluate(() => document.fonts.check('12px B612') && document.fonts.size)).toBe(2);
    await report.close();
    await page.getByTestId('job-keep-report').click();
    await page.getByTestId('job-verify').click();
    await page.getByTestId('verified').waitFor();
    expect(await page.getByTestId('verified').getAttribute('data-sound')).toBe('true');
    const { problems, files } = await verifyJob(join(folder, 'rebuild'));
    expect(problems).toEqual([]);
    expect(files.filter((file) => file.endsWith('.html'))).toHaveLength(1);
    expect((await readFile(join(folder, 'rebuild', 'print.png'))).equals(pixel)).toBe(true);
  });
});
