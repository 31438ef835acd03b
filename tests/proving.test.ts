import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { instrumentsFileSchema } from '../shared/proving/instruments.ts';
import { type Header, headerSchema } from '../shared/session/events.ts';
import { openBrowser } from './tools/browser.ts';
import { DaemonProcess } from './tools/daemon-process.ts';
import { InstrumentPlayer } from './tools/instrument-player.ts';
import { type LevelOrder, LevelPlayer } from './tools/level-player.ts';
import { PtyPair } from './tools/pty-pair.ts';

/** Seed of the noise; printed, so that a failure can be played again. */
const seed = 11;
/** A folder for pictures of the page; none are made without. */
const pictures = process.env.PROVING_PICTURES;

let folder = '';
let daemon: DaemonProcess;
let browser: Browser;
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
  daemon = await DaemonProcess.start('serve', '--folder', join(folder, 'recordings'));
  page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  await page.goto(daemon.url);
  await page.getByTestId('prove').focus();
  await page.keyboard.press('Enter');
  await page.getByTestId('proving').waitFor();
});
afterEach(async () => {
  await page?.close();
  await daemon?.stop();
  await rm(folder, { recursive: true, force: true });
});

const stage = (name: string) => page.locator(`[data-testid="proving"][data-stage="${name}"]`).waitFor();
const sentence = async () => (await page.getByTestId('sentence').textContent()) ?? '';
const press = (key: string) => page.keyboard.press(key);
const steadiness = (state: string) => page.locator(`[data-testid="bench-steadiness"][data-state="${state}"]`);
const kept = async () =>
  instrumentsFileSchema.parse(
    JSON.parse(await readFile(join(folder, 'recordings/instruments.json'), 'utf8')),
  );

/** Types over what stands in a field; keyboard only. */
async function type(name: string, text: string): Promise<void> {
  await page.locator(`[name="${name}"]`).focus();
  await press('Control+A');
  await page.keyboard.type(text);
}

/** Chooses in a list by its keys. */
async function choose(name: string, value: string): Promise<void> {
  await page.locator(`[name="${name}"]`).selectOption(value);
}

async function picture(name: string): Promise<void> {
  if (!pictures) return;
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    for (const size of [
      { width: 1280, height: 800 },
      { width: 768, height: 1024 },
    ]) {
      await page.setViewportSize(size);
      await page.waitForTimeout(150);
      await page.screenshot({ path: `${pictures}/${name}-${colorScheme}-${size.width}.png` });
    }
  }
  await page.emulateMedia({ colorScheme: 'light' });
  await page.setViewportSize({ width: 1280, height: 800 });
}

interface Hand {
  order(order: LevelOrder): void;
  stop(): Promise<void>;
}

/** From the path of a port to the stream that was moved. */
async function meet(path: string, profile: string, hand: Hand, push: number): Promise<void> {
  await picture(`${profile}-1-choose`);
  await type('other-port', path);
  await press('Enter');
  await stage('watch');
  await page.getByTestId(`fit-${profile}`).waitFor();
  await page.waitForFunction(() => /\d\d of \d\d/.test(document.querySelector('.fits')?.textContent ?? ''));
  expect(await page.getByTestId('raw').textContent()).not.toBe('');
  await picture(`${profile}-2-watch`);
  await press('Enter');
  await stage('moved');
  await page.locator('[data-testid="bench-value"]:not([data-value=""])').waitFor();
  expect(await page.getByTestId('that-is-it').isDisabled()).toBe(true);
  hand.order({ do: 'stand', rest: push });
  await page.locator('[data-testid="that-is-it"]:not([disabled])').waitFor();
  await picture(`${profile}-3-moved`);
  hand.order({ do: 'stand', rest: 0 });
  await press('Enter');
  await stage('declare');
}

/** Moves the instrument from pose to pose, each taken by itself when it has come to rest. */
async function through(rests: readonly number[], hand: Hand, from = 0, to = rests.length): Promise<void> {
  for (let k = from; k < to; k += 1) {
    if (k > 0) {
      hand.order({ do: 'lift' });
      await steadiness('moving').waitFor();
    }
    hand.order({ do: 'stand', rest: rests[k]! });
    if (k < rests.length - 1) await taken(k + 1);
  }
}

const taken = (count: number) => page.locator(`[data-testid="steps"][data-taken="${count}"]`).waitFor();

/** The header of the only recording, once it holds a take. */
async function firstTake(): Promise<Header> {
  const recordings = join(folder, 'recordings');
  const [name] = (await readdir(recordings)).filter((file) => file.endsWith('.jsonl'));
  const lines = (await readFile(join(recordings, name!), 'utf8')).trim().split('\n');
  expect(lines.some((line) => JSON.parse(line).type === 'take')).toBe(true);
  return headerSchema.parse(JSON.parse(lines[0]!));
}

describe('from plug-in to the first take', () => {
  let cable: PtyPair;
  let hand: Hand;
  beforeEach(async () => {
    cable = new PtyPair(folder);
    await cable.plugIn();
  });
  afterEach(async () => {
    await hand?.stop();
    await cable?.pullOut();
  });

  test('a level', async () => {
    hand = new LevelPlayer(cable.a, seed);
    hand.order({ do: 'stand', rest: 0 });
    await meet(cable.b, 'line-decimal', hand, 400);
    await type('name', 'L2');
    await type('serial', '4711');
    await type('by', 'visitor');
    await choose('unit', 'arcsec');
    await type('base', '150');
    await type('step', '0.1');
    await picture('line-decimal-4-declare');
    await page.locator('[name="step"]').press('Enter');
    await stage('steps');
    // What is said of its unit is wrong: it counts in µm/m.
    const step = (1000 * 100) / 150;
    const rests = [12, 212, 12, 12 + step, 12, -12, 12, 12, 12, 12, 12];
    await through(rests, hand, 0, 2);
    await picture('line-decimal-5-step');
    await through(rests, hand, 2, 4);
    const slip = page.locator('[data-testid="not-proved"][data-slip="arcsec"]');
    await slip.waitFor();
    expect(await slip.textContent()).toContain('µm/m were taken for arc seconds');
    await picture('line-decimal-6-slip');
    await press('u');
    await page.locator('[data-step="scale"][data-is="good"]').waitFor();
    await through(rests, hand, 4);
    await page.getByTestId('use-it').waitFor();
    expect(await sentence()).toMatch(
      /^Level L2 proved: plus means far foot \(cable end\) HIGH, 1 count = 1 µm\/m, zero 3[78]\.\d+ µm\/m, spread 0\.\d+ µm\/m$/,
    );
    await picture('line-decimal-7-proved');
    await press('Enter');
    await page.getByTestId('setup').waitFor();
    const [proved] = (await kept()).proved;
    expect(proved).toMatchObject({
      sign: 1,
      proving: { name: 'L2', by: 'visitor', unit: 'um/m', serial: '4711' },
    });
    expect(proved!.zero).toBeCloseTo(38, 0);

    await type('part', 'Test bench 1');
    await type('length', '900');
    await page.getByTestId('start').click();
    await page.locator('[data-testid="root"][data-view="survey"]').waitFor();
    hand.order({ do: 'lift' });
    await page.locator('[data-testid="steadiness"][data-state="moving"]').waitFor();
    hand.order({ do: 'stand', rest: 20 });
    await page.waitForFunction(() =>
      document.querySelector('[data-testid="sentence"]')?.textContent?.includes('F1 – F2'),
    );
    expect((await firstTake()).setup.instrument).toEqual({
      name: 'L2',
      source: 'cable',
      port: cable.b,
      profile: 'line-decimal',
      channel: 'tilt',
      serial: '4711',
      unit: 'um/m',
      graduation: 1,
      sigma: proved!.sigma,
      provedOn: `${proved!.day} by visitor`,
    });
  });

  test('an indicator on a line of another speed', async () => {
    hand = new InstrumentPlayer(cable.a, 'sum-frame', seed);
    hand.order({ do: 'stand', rest: 0 });
    await meet(cable.b, 'sum-frame', hand, 300);
    await type('name', 'I1');
    await type('step', '0.1');
    await choose('stepIs', 'block');
    await page.locator('[name="step"]').press('Enter');
    await stage('steps');
    await through([0, 60, 0, 100, 0, 0, 0, 0, 0], hand);
    await page.getByTestId('use-it').waitFor();
    expect(await sentence()).toMatch(
      /^Indicator I1 proved: plus means HIGH, 1 count = 1 mm, spread 0\.000\d+ mm$/,
    );
    await picture('sum-frame-7-proved');
    await press('Enter');
    await page.getByTestId('setup').waitFor();
    const [proved] = (await kept()).proved;
    await type('part', 'Test bench 2');
    await type('length', '300');
    await page.getByTestId('start').click();
    await page.locator('[data-testid="root"][data-view="survey"]').waitFor();
    const before = await sentence();
    hand.order({ do: 'lift' });
    await page.locator('[data-testid="steadiness"][data-state="moving"]').waitFor();
    hand.order({ do: 'stand', rest: 5 });
    await page.waitForFunction(
      (was) => document.querySelector('[data-testid="sentence"]')?.textContent !== was,
      before,
    );
    const { setup } = await firstTake();
    expect(setup).toMatchObject({ plus: 'high' });
    expect(setup.instrument).toMatchObject({
      name: 'I1',
      unit: 'mm',
      sigma: proved!.sigma,
      provedOn: proved!.day,
    });
  });
});

describe('an instrument that is read by eye', () => {
  /** What is said of one graduation, what it truly is in µm/m or µm, and the slip that this makes. */
  const slips = [
    { reads: 'tilt', said: ['0.0005', 'in/10in'], truly: 500 / 12, slip: 'foot' },
    { reads: 'tilt', said: ['0.0005', 'in/ft'], truly: 50, slip: 'foot' },
    { reads: 'tilt', said: ['10', 'arcsec'], truly: 10, slip: 'arcsec' },
    { reads: 'tilt', said: ['10', 'um/m'], truly: 48.48, slip: 'arcsec' },
    { reads: 'tilt', said: ['0.002', 'mm/m'], truly: 2 * 25.4, slip: 'inch' },
    { reads: 'tilt', said: ['0.1', 'mm/m'], truly: 100 / 25.4, slip: 'inch' },
    { reads: 'tilt', said: ['0.002', 'mm/m'], truly: 20, slip: 'decimal' },
    { reads: 'tilt', said: ['0.1', 'mm/m'], truly: 10, slip: 'decimal' },
    { reads: 'height', said: ['0.01', 'in'], truly: 10, slip: 'inch', asked: true },
    { reads: 'height', said: ['0.001', 'mm'], truly: 25.4, slip: 'inch' },
    { reads: 'height', said: ['0.1', 'mm'], truly: 10, slip: 'decimal', asked: true },
    { reads: 'height', said: ['0.001', 'mm'], truly: 10, slip: 'decimal' },
  ] as const;

  const read = async (value: number) => {
    await page.getByTestId('typed').focus();
    await page.keyboard.type(value.toFixed(2));
    await press('Enter');
  };
  /** @param asked with a graduation so coarse the step would prove nothing: it is asked back once */
  const declare = async (reads: string, [graduation, unit]: readonly [string, string], asked = false) => {
    await press('e');
    await stage('declare');
    await choose('reads', reads);
    await type('graduation', graduation);
    await choose('unit', unit);
    await type('step', '0.1');
    if (reads === 'tilt') await type('base', '150');
    await press('Enter');
    if (asked) {
      await wrong().waitFor();
      expect(await wrong().textContent()).toMatch(/^Too small to tell the scale: take a feeler of \d/);
      await page.locator('[name="step"]').press('Enter');
    }
    await stage('steps');
  };
  const wrong = () => page.locator('.field:has([name="step"]) .wrong');

  test('each slip with units is named on the page, whichever way round', async () => {
    for (const { reads, said, truly, slip, ...more } of slips) {
      await declare(reads, said, 'asked' in more);
      const step = (reads === 'tilt' ? 100_000 / 150 : 100) / truly;
      for (const value of [0, step / 2, 0, step]) await read(value);
      const named = page.locator(`[data-testid="not-proved"][data-slip="${slip}"]`);
      await named.waitFor();
      console.log(`${reads}, ${said.join(' ')} for ${truly.toFixed(1)}: ${await named.textContent()}`);
      await press('Escape');
      await page.getByTestId('prove').focus();
      await press('Enter');
      await stage('choose');
    }
  });

  test('what it is may be put right in the middle, and what was read stays', async () => {
    await declare('tilt', ['0.02', 'mm/m']);
    for (const value of [0.2, 4, 0.2]) await read(value);
    await page.locator('[data-testid="steps"][data-taken="3"]').waitFor();
    await page.getByRole('button', { name: 'What it is' }).click();
    await stage('declare');
    expect(await page.locator('[name="base"]').inputValue()).toBe('150');
    await type('base', '200');
    await press('Enter');
    await page.locator('[data-testid="steps"][data-taken="3"]').waitFor();
    // 100 µm on 200 mm are 25 graduations.
    await read(25.2);
    await page.locator('[data-step="scale"][data-is="good"]').waitFor();
    await page.getByRole('button', { name: 'What it is' }).click();
    await type('step', '0.2');
    await press('Enter');
    await page.locator('[data-testid="steps"][data-taken="2"]').waitFor();
  });

  test('a feeler that can prove nothing is asked back, with the size that would do', async () => {
    await press('e');
    await stage('declare');
    await type('base', '150');
    await type('step', '0.005');
    await press('Enter');
    await wrong().waitFor();
    expect(await wrong().textContent()).toBe(
      'Too small to tell the scale: take a feeler of 0.05 mm or more, or gauge blocks of 0.02 mm or more. If all is as said, begin all the same.',
    );
    await type('step', '0.05');
    await press('Enter');
    await stage('steps');
  });

  test('a spirit level is proved with what is typed', async () => {
    await declare('tilt', ['0.02', 'mm/m']);
    // Graduations of 20 µm/m; the step is 33.3 of them.
    for (const value of [0.2, 4, 0.2, 33.5]) await read(value);
    await picture('typed-step');
    for (const value of [0.2, -0.4, 0.2, 0.4, 0.2, 0, 0.2]) await read(value);
    await page.getByTestId('use-it').waitFor();
    expect(await sentence()).toBe(
      'Level L1 proved: plus means far foot (marked end) HIGH, 1 graduation = 0.02 mm/m, zero minus 0.002 mm/m, spread 0.003 mm/m',
    );
    await press('k');
    await stage('choose');
    await page.getByTestId('proved-before').waitFor();
    expect((await kept()).proved).toHaveLength(1);
    await picture('known');
  });
});
