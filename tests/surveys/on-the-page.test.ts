import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest';
import { demoScene, demoSetups } from '../../daemon/simulate/scenario.ts';
import { World } from '../../daemon/simulate/world.ts';
import { reduce } from '../../shared/reduce.ts';
import { type Setup, type SetupInput, setupSchema } from '../../shared/session/setup.ts';
import type { Result } from '../../shared/sheet/result.ts';
import { parseSheet } from '../../shared/sheet/sheet.ts';
import { anotherPort, formOf } from '../../web/setup/setup-form.ts';
import { openBrowser } from '../tools/browser.ts';
import { DaemonProcess } from '../tools/daemon-process.ts';
import { InstrumentPlayer } from '../tools/instrument-player.ts';
import { LevelPlayer } from '../tools/level-player.ts';
import { PageClient } from '../tools/page-client.ts';
import { PtyPair } from '../tools/pty-pair.ts';
import { judged } from './true-figures.ts';

/** Seed of the noise; printed, so that a failure can be walked again. */
const seed = 23;
/** What a reading of each player is good to when it is taken steady: its noise, and what is left of its ringing. */
const level = { name: 'level', unit: 'um/m', profile: 'line-decimal', sigma: 0.6 } as const;
const indicator = { name: 'indicator', unit: 'mm', profile: 'sum-frame', sigma: 0.0004 } as const;

/** Every kind, with as few stations as still make one. */
const surveys: readonly SetupInput[] = [
  { ...demoSetups.way, lengthMm: 900, baseMm: 300, stations: 4, back: 'same' },
  { ...demoSetups.bed, lengthMm: 800, baseMm: 400, stations: 3 },
  { ...demoSetups.plate, lengthMm: 450, widthMm: 450, baseMm: 200 },
  { ...demoSetups.slide, stations: 3 },
  { ...demoSetups.straightedge, stations: 4 },
  { ...demoSetups.square, stations: 3 },
  { ...demoSetups.bar, stations: 3 },
  { ...demoSetups.dovetail, stations: 3 },
  { ...demoSetups.repeat, rows: 2, stations: 3 },
  demoSetups.collars,
  demoSetups.face,
];

let browser: Browser;
let folder = '';
let cable: PtyPair;
let daemon: DaemonProcess;
let page: Page;

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
  page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  page.setDefaultTimeout(15_000);
});
afterEach(async () => {
  await page?.close();
  await daemon?.stop();
  await cable?.pullOut();
  await rm(folder, { recursive: true, force: true });
});

test.each(surveys.map((survey) => [survey.kind, survey] as const))(
  'a %s: set up on the page, read over a cable, the truth within its uncertainty, the sheet reduced to the same',
  async (_, input) => {
    const setup = overCable(input);
    const world = new World(setup, demoScene(setup));
    const player =
      world.plan.runs[0]!.reads === 'tilt'
        ? new LevelPlayer(cable.a, seed)
        : new InstrumentPlayer(cable.a, indicator.profile, seed);
    const observer = await PageClient.open(daemon.url);
    try {
      await page.goto(daemon.url);
      await fillIn(setup);
      await observer.until(() => observer.session !== null);
      expect(observer.header!.setup).toEqual(setup);

      // Whoever holds the instrument looks at the page: where it asks for, there it is put.
      for (let next = observer.session!.next; next; next = observer.session!.next) {
        await page.waitForFunction((names) => {
          const sentence = document.querySelector('[data-testid="sentence"]')?.textContent ?? '';
          return names.every((name) => sentence.includes(name));
        }, next.at);
        player.order({ do: 'lift' });
        await page.locator('[data-testid="steadiness"][data-state="moving"]').waitFor();
        player.order({ do: 'stand', rest: world.reading(next) });
        const before = observer.session!.counted.size;
        await observer.until(() => observer.session!.counted.size > before);
      }
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
          3 * u + 1e-9,
        );
      }
    } finally {
      observer.close();
      await player.stop();
    }
  },
  180_000,
);

/** The survey as it is set up here: its instrument on the cable, nothing remembered. */
function overCable(input: SetupInput): Setup {
  const kept = input.kind === 'way' || input.kind === 'bed' || input.kind === 'plate' ? level : indicator;
  return setupSchema.parse({ ...input, instrument: { ...kept, source: 'cable', port: cable.b } });
}

/** Fills in the set-up by its fields, as a person would, and starts. */
async function fillIn(setup: Setup): Promise<void> {
  const { kind, source, port, portPath: _, profile, ...rest } = formOf(setup);
  await page.getByTestId('set-up').click();
  await page.getByTestId(`kind-${kind}`).check();
  await choose('source', source);
  await choose('port', anotherPort);
  await choose('portPath', port);
  await choose('profile', profile);
  for (const [name, value] of Object.entries(rest)) await choose(name, value);
  await page.getByTestId('start').click();
}

/** Gives a field its value; fields that this kind does not have are passed over. */
async function choose(name: string, value: string): Promise<void> {
  const field = page.locator(`[name="${name}"]`);
  if ((await field.count()) === 0) return;
  const isList = await field.first().evaluate((element) => element.tagName === 'SELECT');
  if (isList) await field.selectOption(value);
  // What is as it should be may lie in a part of the form that is folded away.
  else if ((await field.inputValue()) !== value) await field.fill(value);
}
