import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest';
import { demoScene, demoSetups } from '../../daemon/simulate/scenario.ts';
import { World } from '../../daemon/simulate/world.ts';
import { reduce } from '../../shared/reduce.ts';
import { setupSchema } from '../../shared/session/setup.ts';
import type { Result } from '../../shared/sheet/result.ts';
import { parseSheet } from '../../shared/sheet/sheet.ts';
import { openBrowser } from '../tools/browser.ts';
import { DaemonProcess } from '../tools/daemon-process.ts';
import { InstrumentPlayer } from '../tools/instrument-player.ts';
import { PageClient } from '../tools/page-client.ts';
import { PtyPair } from '../tools/pty-pair.ts';
import { judged } from './true-figures.ts';

/** Seed of the noise; printed, so that a failure can be walked again. */
const seed = 31;

let browser: Browser;
let folder = '';
let cable: PtyPair;
let daemon: DaemonProcess;
let page: Page;
let player: InstrumentPlayer;
let observer: PageClient;

const setup = () =>
  setupSchema.parse({
    ...demoSetups.slide,
    faces: 'top',
    stations: 4,
    instrument: { name: 'indicator', unit: 'mm', profile: 'sum-frame', source: 'cable', port: cable.b },
  });

beforeAll(async () => {
  console.log(`seed ${seed}`);
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
});
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'wayscribe-'));
  cable = new PtyPair(folder);
  await cable.plugIn();
  daemon = await DaemonProcess.start('serve', '--folder', join(folder, 'recordings'));
  player = new InstrumentPlayer(cable.a, 'sum-frame', seed);
  page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  page.setDefaultTimeout(60_000);
  observer = await PageClient.open(daemon.url);
  expect(await observer.ask({ do: 'start', setup: setup() })).toBeNull();
  await page.goto(daemon.url);
  await page.locator('[data-testid="root"][data-view="survey"]').waitFor();
});
afterEach(async () => {
  observer?.close();
  await page?.close();
  await player?.stop();
  await daemon?.stop();
  await cable?.pullOut();
  await rm(folder, { recursive: true, force: true });
});

const says = (words: string) =>
  page.waitForFunction(
    (wanted) => document.querySelector('[data-testid="sentence"]')?.textContent?.includes(wanted),
    words,
  );

const slidesNoMore = () =>
  page.waitForFunction(
    () => !document.querySelector('[data-testid="sentence"]')?.textContent?.includes('Slide'),
  );

/** Until so many more readings have come: the tip has been there all the while. */
async function readings(count: number): Promise<void> {
  const heard = () => observer.messages.filter(({ type }) => type === 'live').length;
  const enough = heard() + count;
  await observer.until(() => heard() >= enough);
}

test('a slide is swept on without a stop, each place marked with the pedal: keys only, the truth within its uncertainty', async () => {
  const world = new World(setup(), demoScene(setup()));
  for (const run of world.plan.runs) {
    const places = observer.session!.placements.filter((place) => place.run === run.id);
    player.order({ do: 'carry', rest: world.reading(places[0]!) });
    await readings(10);
    await page.keyboard.press('u');
    for (const place of places) {
      await says(`Slide on, mark ${place.at[0]}`);
      player.order({ do: 'carry', rest: world.reading(place) });
      // Well over half a second, so that no reading of the place before it is among those around the mark.
      await readings(15);
      const before = observer.session!.takes.length;
      await page.keyboard.press('PageDown');
      await observer.until(() => observer.session!.takes.length > before);
      const { event } = observer.session!.takes.at(-1)!;
      expect(event).toMatchObject({
        place,
        by: 'pedal',
        steadiness: null,
        swept: { by: 'marks', way: run.id.endsWith('back') ? 'back' : 'out' },
      });
      expect(event.count).toBeGreaterThan(3);
    }
    expect(observer.session!.sweeping).toBeNull();
  }
  await page.locator('[data-testid="finish"].main').waitFor();
  await page.keyboard.press('f');
  await page.getByTestId('finish-yes').click();
  await page.locator('[data-testid="root"][data-view="result"]').waitFor();
  const exported = async (what: string) => {
    const href = await page.getByTestId(`export-${what}`).getAttribute('href');
    return (await page.request.get(new URL(href!, daemon.url).href)).text();
  };
  const result = JSON.parse(await exported('result')) as Result;
  expect(JSON.parse(JSON.stringify(reduce(parseSheet(await exported('sheet')))))).toEqual(result);
  for (const { name, value, u, truth } of judged(world.plan, world.truthUm(), result)) {
    expect(Math.abs(value - truth), `${name}: ${value} ± ${u}, in truth ${truth}`).toBeLessThanOrEqual(
      4 * u + 1e-9,
    );
  }
}, 120_000);

test('at an even pace the first place and the last are marked; what is said follows, and it can be stopped', async () => {
  player.order({ do: 'carry', rest: 3 });
  await readings(10);
  await page.keyboard.press('j');
  await says('Slide evenly, mark T0 first');
  expect(await page.getByTestId('take').textContent()).toContain('Mark');
  await page.keyboard.press(' ');
  await says('Slide on evenly, mark T3');
  // The tip stands still meanwhile, which is an even pace too.
  await readings(120);
  await page.keyboard.press(' ');
  await observer.until(() => observer.session!.takes.length === 4);
  expect(observer.session!.takes.map(({ event }) => [event.place.at[0], event.swept?.by])).toEqual(
    ['T0', 'T1', 'T2', 'T3'].map((name) => [name, 'even']),
  );
  await slidesNoMore();
  await page.keyboard.press('j');
  await says('Slide evenly, mark T3 first');
  await page.keyboard.press('j');
  await observer.until(() => observer.session!.sweeping === null);
  await slidesNoMore();
}, 120_000);
