import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterEach, expect, test } from 'vitest';
import { readRecording } from '../../daemon/recording/reader.ts';
import { fold } from '../../shared/session/fold.ts';
import { placeWords } from '../../shared/survey/plan.ts';
import { openBrowser } from '../tools/browser.ts';
import { DaemonProcess } from '../tools/daemon-process.ts';
import { finish, reduced, setUp, takeHome } from './page-survey.ts';
import { judged } from './true-figures.ts';

const farthest = 4;
let folder = '';
let daemon: DaemonProcess | null = null;
let browser: Browser | null = null;

afterEach(async () => {
  await browser?.close();
  await daemon?.stop();
  await rm(folder, { recursive: true, force: true });
});

async function open(): Promise<Page> {
  daemon = await DaemonProcess.start('demo', '--folder', folder, '--pace', '5');
  browser = await openBrowser();
  const page = await browser.newPage({ reducedMotion: 'reduce' });
  await page.goto(daemon.url);
  return page;
}

/** The heights that the page shows, to compare what is seen before and after. */
function heights(page: Page) {
  return page
    .locator('tr[data-station]')
    .evaluateAll((rows) =>
      rows.map(({ dataset }: HTMLElement | SVGElement) => [dataset.station, dataset.heightUm]),
    );
}

test('a bed, broken off in its middle by the loss of daemon and browser, comes out as if nothing had been', async () => {
  folder = await mkdtemp(join(tmpdir(), 'wayscribe-'));
  let page = await open();
  await setUp(page, { kind: 'bed', sigma: 0.5, fields: { length: '1200', base: '400', stations: '4' } });
  await page.getByTestId('sim-walk').click();
  // Half way through the readings across the two ways.
  await page.waitForFunction(() =>
    /F2 – R2/.test(document.querySelector('[data-testid="sentence"]')?.textContent ?? ''),
  );
  const shown = await heights(page);
  const sentence = await page.getByTestId('sentence').textContent();
  await daemon?.stop('SIGKILL');
  await browser?.close();

  page = await open();
  await page.locator('[data-testid="root"][data-view="survey"]').waitFor();
  expect(await heights(page)).toEqual(shown);
  expect(await page.getByTestId('sentence').textContent()).toContain(
    /F2 – R2/.exec(sentence ?? '')?.[0] ?? 'nothing',
  );
  await page.getByTestId('sim-walk').click();
  await finish(page);

  const { sheetPath, recordingPath } = await takeHome(page, folder);
  const result = await reduced(sheetPath);
  expect(result).toEqual(await reduced(recordingPath));
  const { header, events } = await readRecording(recordingPath, { skipReadings: true });
  const session = fold(header, events);
  expect(session.takes.map(({ event }) => placeWords(event.place))).toEqual(
    session.placements.map((place) => placeWords(place)),
  );
  expect(events.filter(({ type }) => type === 'resumed')).toHaveLength(1);
  for (const { name, value, u, truth } of judged(session.plan, header.simulated!.truthUm, result))
    expect(Math.abs(value - truth), name).toBeLessThan(Math.max(farthest * u, 1e-6));
}, 120_000);
