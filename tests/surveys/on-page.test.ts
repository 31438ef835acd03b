import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readRecording } from '../../daemon/recording/reader.ts';
import { fold } from '../../shared/session/fold.ts';
import type { Result } from '../../shared/sheet/result.ts';
import { openBrowser } from '../tools/browser.ts';
import { DaemonProcess } from '../tools/daemon-process.ts';
import { type FilledIn, finish, reduced, setUp, takeHome } from './page-survey.ts';
import { judged } from './true-figures.ts';

/** How many times faster than a person the simulated instrument is moved. */
const pace = '5';
/**
 * Standard deviation of one take, as typed into the set-up: level in µm/m, indicator and micrometer in mm. The noise of a
 * window's mean is a quarter of it; the last digit and what is left of the swing make the rest.
 */
const sigma = { level: 0.5, indicator: 0.0004 };
/** One survey can't show a share of 95 %, many do headless; here no number lies off by more than so many sigmas. */
const farthest = 4;

interface OnPage extends FilledIn {
  readonly takes: number;
}

const surveys: readonly OnPage[] = [
  {
    kind: 'way',
    sigma: sigma.level,
    fields: { length: '1200', base: '200', stations: '7' },
    choices: { back: 'same' },
    takes: 12,
  },
  { kind: 'bed', sigma: sigma.level, fields: { length: '1200', base: '400', stations: '4' }, takes: 16 },
  { kind: 'plate', sigma: sigma.level, fields: { base: '300' }, takes: 20 },
  { kind: 'slide', sigma: sigma.indicator, fields: { stations: '4' }, takes: 16 },
  { kind: 'straightedge', sigma: sigma.indicator, fields: { stations: '6' }, takes: 12 },
  { kind: 'square', sigma: sigma.indicator, fields: {}, takes: 8 },
  { kind: 'bar', sigma: sigma.indicator, fields: { stations: '3' }, takes: 12 },
  { kind: 'dovetail', sigma: sigma.indicator, fields: {}, takes: 5 },
];

describe.concurrent('each kind on the page, from its set-up to what the metal is like', () => {
  let browser: Browser;

  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(async () => {
    await browser?.close();
  });

  test.each(surveys.map((survey) => [survey.kind, survey] as const))(
    '%s',
    async (_, survey) => {
      const folder = await mkdtemp(join(tmpdir(), 'wayscribe-'));
      const daemon = await DaemonProcess.start('demo', '--folder', folder, '--pace', pace);
      const page = await browser.newPage({
        viewport: { width: 1280, height: 800 },
        reducedMotion: 'reduce',
      });
      try {
        await page.goto(daemon.url);
        await setUp(page, survey);
        await page.getByTestId('sim-walk').click();
        await finish(page);

        const { sheetPath, recordingPath } = await takeHome(page, folder);
        const result = await reduced(sheetPath);
        expect(result).toEqual(await reduced(recordingPath));

        const { header, events } = await readRecording(recordingPath, { skipReadings: true });
        const { plan, counted } = fold(header, events);
        expect(counted.size).toBe(survey.takes);
        const numbers = judged(plan, header.simulated!.truthUm, result);
        expect(numbers.length).toBeGreaterThan(survey.takes / 2);
        for (const { name, value, u, truth } of numbers) {
          expect(Math.abs(value - truth), name).toBeLessThan(Math.max(farthest * u, 1e-6));
        }
        await expectShown(page, survey, result);
      } finally {
        await page.close();
        await daemon.stop();
        await rm(folder, { recursive: true, force: true });
      }
    },
    120_000,
  );
});

/** The page shows the very numbers of the result: its large figure, the row of figures, and the heights. */
async function expectShown(page: Page, { kind }: OnPage, result: Result): Promise<void> {
  const ofResult = (name: string) => {
    const figure = result.figures[name];
    if (figure) return [figure.value, figure.u];
    const line = result.lines[name.replace(/\.straightness$/, '')]!;
    const motion = kind === 'slide' || kind === 'dovetail';
    const { valueUm, uUm } = line.straightness[motion ? 'leastSquares' : 'ends'];
    return [valueUm, uUm];
  };
  const data = await page
    .locator('[data-testid="figure"], [data-testid="figures"] [data-figure]')
    .evaluateAll((all) => all.map((each) => ({ ...(each as HTMLElement).dataset })));
  expect(data.length).toBeGreaterThan(0);
  for (const { figure, value, u, valueUm, uUm } of data)
    expect([Number(value ?? valueUm), Number(u ?? uUm)], figure).toEqual(ofResult(figure!));
  if (kind !== 'way' && kind !== 'bed' && kind !== 'straightedge') return;
  const rows = await page
    .locator('tr[data-station]')
    .evaluateAll((all) => all.map((each) => ({ ...(each as HTMLElement).dataset })));
  const heights = Object.values(result.lines).flatMap(({ stations }) => Object.entries(stations));
  expect(rows).toHaveLength(heights.length);
  if (kind === 'bed') return;
  expect(rows.map(({ station, heightUm }) => [station, Number(heightUm)])).toEqual(
    heights.map(([name, { heightUm }]) => [name, heightUm]),
  );
}
