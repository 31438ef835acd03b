import { execFile } from 'node:child_process';
import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readRecording } from '../daemon/recording/reader.ts';
import { verifyRecording } from '../daemon/recording/verify.ts';
import { World } from '../daemon/simulate/world.ts';
import { fold } from '../shared/session/fold.ts';
import { setupSchema } from '../shared/session/setup.ts';
import type { Placement } from '../shared/survey/plan.ts';
import { openBrowser } from './tools/browser.ts';
import { DaemonProcess } from './tools/daemon-process.ts';
import { LevelPlayer } from './tools/level-player.ts';
import { PtyPair } from './tools/pty-pair.ts';

/** Seed of the shape and of the noise; printed, so that a failure can be walked again. */
const seed = 5;
const stations = 13;
const baseMm = 150;
const noiseUmPerM = 0.3;

/** The hidden shape of the way; constructed. */
function hiddenShape(xMm: number): number {
  return -11 * Math.exp(-(((xMm - 700) / 330) ** 2)) + 2 * Math.sin(xMm / 230) + 0.02 * xMm;
}

/** The set-up that is filled in on the page, to know what the level would read where. */
const setup = setupSchema.parse({
  kind: 'way',
  part: 'Test bench 1',
  surface: 'front way',
  lengthMm: 1800,
  baseMm,
  stations,
  back: 'no',
  instrument: { name: 'level', source: 'cable', port: 'unused', profile: 'line-decimal', unit: 'um/m' },
});
const world = new World(setup, { name: 'hidden', surface: hiddenShape });

describe('a level walked down a way, from the wire to the picture', () => {
  let folder = '';
  let cable: PtyPair;
  let level: LevelPlayer;
  let daemon: DaemonProcess;
  let browser: Browser;
  let page: Page;

  beforeAll(async () => {
    console.log(`seed ${seed}`);
    folder = await mkdtemp(join(tmpdir(), 'wayscribe-'));
    cable = new PtyPair(folder);
    await cable.plugIn();
    level = new LevelPlayer(cable.a, seed);
    daemon = await DaemonProcess.start('serve', '--folder', join(folder, 'recordings'));
    browser = await openBrowser();
    page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  });
  afterAll(async () => {
    await browser?.close();
    await daemon?.stop();
    await level?.stop();
    await cable?.pullOut();
    await rm(folder, { recursive: true, force: true });
  });

  const recordingPath = async () => {
    const [name] = (await readdir(join(folder, 'recordings'))).filter((file) => file.endsWith('.jsonl'));
    return join(folder, 'recordings', name!);
  };
  const sentence = () => page.getByTestId('sentence').textContent();
  const steadiness = (state: string) => page.locator(`[data-testid="steadiness"][data-state="${state}"]`);
  const placeOf = (k: number): Placement => ({ run: 'front way out', at: [`F${k}`, `F${k + 1}`] });

  /** The hand: lifts the level until the page has felt it, and sets it on step k. */
  async function setDown(k: number): Promise<void> {
    level.order({ do: 'lift' });
    await steadiness('moving').waitFor();
    level.order({ do: 'stand', rest: world.reading(placeOf(k)) });
  }

  test('the set-up is filled in on the page, and the needle moves', async () => {
    await page.goto(daemon.url);
    await page.getByTestId('set-up').click();
    await page.locator('[name="part"]').fill('Test bench 1');
    await page.locator('[name="length"]').fill('1800');
    await page.locator('[name="base"]').fill(String(baseMm));
    await page.locator('[name="port"]').selectOption('another');
    await page.locator('[name="portPath"]').fill(cable.b);
    await page.locator('[name="profile"]').selectOption('line-decimal');
    await page.locator('[name="back"]').selectOption('no');
    expect(await page.locator('[name="stations"]').inputValue()).toBe(String(stations));
    await page.getByTestId('start').click();
    await page.waitForFunction(() =>
      document.querySelector('[data-testid="sentence"]')?.textContent?.includes('F0 – F1'),
    );
    await page.waitForFunction(
      () => (document.querySelector('[data-testid="live-value"]') as HTMLElement)?.dataset.value !== '',
    );
  });

  test('six stations are taken hands-free, with the cable pulled out in the middle', async () => {
    for (let k = 0; k < 6; k += 1) {
      expect(await sentence()).toContain(`F${k} – F${k + 1}`);
      if (k === 3) {
        // In the hand it can't be taken, however long the cable takes to be pulled out.
        level.order({ do: 'lift' });
        await steadiness('moving').waitFor();
        // Half a frame is on the wire when the cable goes.
        level.order({ do: 'write', bytes: '+00' });
        await cable.pullOut();
        await page.getByTestId('stale').waitFor();
        await cable.plugIn();
        await page.getByTestId('stale').waitFor({ state: 'detached' });
      }
      await setDown(k);
      await page.waitForFunction(
        (next) => document.querySelector('[data-testid="sentence"]')?.textContent?.includes(next),
        `F${k + 1} – F${k + 2}`,
      );
    }
  });

  test('six more are taken by key, and not before the reading has settled', async () => {
    await page.keyboard.press('h');
    for (let k = 6; k < 12; k += 1) {
      level.order({ do: 'lift' });
      await steadiness('moving').waitFor();
      await page.keyboard.press('Space');
      expect(await page.getByTestId('refusal').getAttribute('data-code')).toBe('take.unsteady');
      level.order({ do: 'stand', rest: world.reading(placeOf(k)) });
      await steadiness('steady').waitFor();
      expect(await sentence()).toContain(`F${k} – F${k + 1}`);
      await page.keyboard.press('Space');
      if (k < 11) {
        await page.waitForFunction(
          (next) => document.querySelector('[data-testid="sentence"]')?.textContent?.includes(next),
          `F${k + 1} – F${k + 2}`,
        );
      }
    }
  });

  test('the picture equals reduce on the recording, and the truth within its uncertainty', async () => {
    await page.waitForFunction(() => document.querySelectorAll('tr[data-station]').length === 13);
    await page.keyboard.press('f');
    await page.getByTestId('finish-yes').click();
    await page.locator('[data-testid="root"][data-view="result"]').waitFor();
    const { stdout } = await promisify(execFile)(process.execPath, [
      'dist/wayscribe.js',
      'reduce',
      await recordingPath(),
      '--json',
    ]);
    const line = JSON.parse(stdout).lines['front way'];
    const shown = await page
      .locator('tr[data-station]')
      .evaluateAll((rows) => rows.map((row) => ({ ...(row as HTMLElement).dataset })));
    expect(shown).toHaveLength(stations);
    const truth = world.truthUm();
    for (const { station, heightUm, uUm } of shown) {
      expect(Number(heightUm)).toBe(line.stations[station!].heightUm);
      expect(Number(uUm)).toBe(line.stations[station!].uUm);
      const x = Number(station!.slice(1)) / (stations - 1);
      const overEnds = truth[station!]! - (truth.F0! + x * (truth.F12! - truth.F0!));
      // The level that is played has this much noise in one reading of a window of at least ten.
      const known = (noiseUmPerM / Math.sqrt(10)) * (baseMm / 1000) * (Math.sqrt(stations - 1) / 2);
      expect(Math.abs(Number(heightUm) - overEnds)).toBeLessThan(Math.max(2 * Number(uUm), 4 * known));
    }
    const figure = page.getByTestId('figure');
    expect(Number(await figure.getAttribute('data-value-um'))).toBe(line.straightness.ends.valueUm);
    for (const [key, reference] of [
      ['2', 'leastSquares'],
      ['3', 'minimumZone'],
    ] as const) {
      await page.keyboard.press(key);
      await page.locator(`[data-testid="figure"][data-reference="${reference}"]`).waitFor();
      expect(Number(await figure.getAttribute('data-value-um'))).toBe(line.straightness[reference].valueUm);
    }
  });

  test('the gap is on record, and no half line became a reading', async () => {
    const path = await recordingPath();
    const { header, events } = await readRecording(path);
    const session = fold(header, events);
    expect(session.counted.size).toBe(12);
    expect(session.gaps.map(({ is }) => is)).toEqual(['lost', 'back']);
    expect([...session.counted.values()].map(({ by }) => by)).toEqual([
      ...Array(6).fill('hands-free'),
      ...Array(6).fill('key'),
    ]);
    const written = new Set(level.frames);
    const readings = events.filter((event) => event.type === 'reading');
    expect(readings.length).toBeGreaterThan(200);
    for (const { raw } of readings) expect(written).toContain(raw);
    expect(await verifyRecording(path)).toMatchObject({ problems: [], closed: true });
    expect(await readFile(path, 'utf8')).toMatch(/\n$/);
  });
});
