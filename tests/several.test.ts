import { mkdir, mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest';
import { readRecording } from '../daemon/recording/reader.ts';
import type { InstrumentsFile, ProvedInstrument } from '../shared/proving/instruments.ts';
import { openBrowser } from './tools/browser.ts';
import { DaemonProcess } from './tools/daemon-process.ts';
import { LevelPlayer } from './tools/level-player.ts';
import { PtyPair } from './tools/pty-pair.ts';

/** Two levels that were proved, on a page of a real daemon: one is walked, the other one stays put. */

/** A folder for pictures of the page; none are made without. */
const pictures = process.env.SEVERAL_PICTURES;

let folder = '';
let cables: PtyPair[] = [];
let levels: LevelPlayer[] = [];
let daemon: DaemonProcess;
let browser: Browser;
let page: Page;

beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
});
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'wayscribe-'));
  const recordings = join(folder, 'recordings');
  await mkdir(recordings);
  cables = await Promise.all(
    ['L1', 'L2'].map(async (name) => {
      await mkdir(join(folder, name));
      const cable = new PtyPair(join(folder, name));
      await cable.plugIn();
      return cable;
    }),
  );
  levels = cables.map(({ a }, k) => new LevelPlayer(a, 20 + k));
  for (const level of levels) level.order({ do: 'stand', rest: 0 });
  const proved = cables.map(({ b }, k) => provedLevel(`L${k + 1}`, b, 2 - k));
  const file: InstrumentsFile = { instruments: 1, proved };
  await writeFile(join(recordings, 'instruments.json'), JSON.stringify(file));
  daemon = await DaemonProcess.start('serve', '--folder', recordings);
  page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
});
afterEach(async () => {
  // A list that is still on its way when the page goes is nobody's any more.
  await page?.unrouteAll({ behavior: 'ignoreErrors' });
  await page?.close();
  await daemon?.stop();
  await Promise.all(levels.map((level) => level.stop()));
  await Promise.all(cables.map((cable) => cable.pullOut()));
  await rm(folder, { recursive: true, force: true });
});

function provedLevel(name: string, port: string, t: number): ProvedInstrument {
  return {
    t,
    day: '2026-03-01',
    sign: 1,
    zero: 38,
    sigma: 0.3,
    proving: {
      name,
      reads: 'tilt',
      source: 'cable',
      port,
      profile: 'line-decimal',
      channel: 'tilt',
      unit: 'um/m',
      unitOpen: true,
      graduation: 1,
      resolution: 0.1,
      far: 'cable end',
      baseMm: 150,
      stepUm: 100,
      stepIs: 'feeler',
      by: 'visitor',
      takes: [],
    },
  };
}

async function openSetup(): Promise<void> {
  await page.goto(daemon.url);
  await page.getByTestId('set-up').click();
  await page.getByTestId('setup').waitFor();
  await page.getByTestId('proved-now').waitFor();
}

async function picture(name: string): Promise<void> {
  if (!pictures) return;
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    for (const size of [
      { width: 1280, height: 800 },
      { width: 1024, height: 768 },
      { width: 768, height: 1024 },
    ]) {
      await page.setViewportSize(size);
      await page.waitForTimeout(200);
      await page.screenshot({ path: `${pictures}/${name}-${colorScheme}-${size.width}.png`, fullPage: true });
    }
  }
  await page.emulateMedia({ colorScheme: 'light' });
  await page.setViewportSize({ width: 1280, height: 800 });
}

test('what was proved is filled in, and the set-up warns where it says otherwise', async () => {
  await openSetup();
  expect(await page.locator('[name="name"]').inputValue()).toBe('L1');
  expect(await page.locator('[name="sigma"]').inputValue()).toBe('0.3');
  expect(await page.locator('[name="profile"]').inputValue()).toBe('line-decimal');
  expect(await page.getByTestId('proved-now').textContent()).toContain(
    'plus means far foot (cable end) HIGH',
  );
  expect(await page.getByText('Its plus end (cable end) points to').count()).toBe(1);
  expect(await page.getByTestId('contradiction').count()).toBe(0);
  await page.locator('[name="unit"]').selectOption('arcsec');
  expect(await page.getByTestId('contradiction').textContent()).toBe(
    'One count of L1 was proved to be 1 µm/m; here it is 1 arc seconds: every height would come out 4.85 times as large.',
  );
  await picture('warned');
  await page.locator('[name="proved"]').selectOption('L2');
  expect(await page.locator('[name="name"]').inputValue()).toBe('L2');
  expect(await page.locator('[name="unit"]').inputValue()).toBe('um/m');
  expect(await page.getByTestId('contradiction').count()).toBe(0);
});

test('one level is walked, the other one stays put: each has its needle, and a take holds both', async () => {
  await openSetup();
  await page.locator('[name="reference"]').selectOption('L2');
  await page.locator('[name="part"]').fill('Test bench 1');
  await page.locator('[name="length"]').fill('900');
  await picture('reference');
  await page.getByTestId('start').click();
  await page.locator('[data-testid="root"][data-view="survey"]').waitFor();
  await page.locator('[data-testid="along-L2"][data-stale="false"]').waitFor();
  levels[0]!.order({ do: 'lift' });
  await page.locator('[data-testid="steadiness"][data-state="moving"]').waitFor();
  levels[0]!.order({ do: 'stand', rest: 20 });
  await page.getByText('F1 – F2').first().waitFor();
  await page.waitForFunction(() =>
    document.querySelector('[data-testid="sentence"]')?.textContent?.includes('F1 – F2'),
  );
  await picture('walked');
  await cables[1]!.pullOut();
  await page.locator('[data-testid="along-L2"]').getByText('cable is out').waitFor();
  levels[0]!.order({ do: 'lift' });
  await page.locator('[data-testid="steadiness"][data-state="moving"]').waitFor();
  levels[0]!.order({ do: 'stand', rest: 30 });
  await page.getByText('the reference level L2 is silent').first().waitFor();
  await picture('lost');
  const [name] = (await readdir(join(folder, 'recordings'))).filter((file) => file.endsWith('.jsonl'));
  const { header, events } = await readRecording(join(folder, 'recordings', name!));
  expect(header.setup).toMatchObject({
    others: [{ name: 'L2', port: cables[1]!.b, sigma: 0.3, provedOn: '2026-03-01 by visitor' }],
    reference: { name: 'L2', faces: 'far' },
  });
  expect(header.otherProfiles).toMatchObject([{ id: 'line-decimal' }]);
  const takes = events.filter((event) => event.type === 'take');
  expect(takes).toHaveLength(1);
  expect(takes[0]).toMatchObject({ from: 'L1', reference: { from: 'L2' } });
  expect(Math.abs(takes[0]!.reference!.value - 38)).toBeLessThan(1);
  expect(new Set(events.flatMap((event) => (event.type === 'reading' ? [event.from] : [])))).toEqual(
    new Set(['L1', 'L2']),
  );
});

test('two adapters are alike: before the survey starts the person moves the one', async () => {
  const [port, other] = ['usb:1a86:7523:socket:one', 'usb:1a86:7523:socket:two'];
  const alike = (identity: string, path: string) => ({ path, label: path, identity, alike: true });
  await page.route('**/api/ports', async (route) => {
    const list = await (await route.fetch()).json();
    await route.fulfill({ json: { ...list, ports: [alike(other, '/dev/a'), alike(`${port}3`, '/dev/b')] } });
  });
  await page.route('**/api/instruments', (route) =>
    route.fulfill({ json: { instruments: [{ proved: provedLevel('L1', port, 1), is: 'tie' }], asked: [] } }),
  );
  await page.goto(daemon.url);
  await page.getByTestId('set-up').click();
  await page.getByTestId('setup').waitFor();
  await page.locator('[name="proved"]').selectOption('L1');
  await page.getByTestId('alike').waitFor();
  await picture('alike');
  await page.locator('[name="part"]').fill('Test bench 1');
  await page.locator('[name="length"]').fill('900');
  await page.getByTestId('start').click();
  await page.getByTestId('find-by-moving').waitFor();
  expect(await page.getByTestId('sentence').textContent()).toBe('Adapters are alike: move L1');
  expect((await readdir(join(folder, 'recordings'))).filter((file) => file.endsWith('.jsonl'))).toEqual([]);
  await picture('find');
  await page.keyboard.press('b');
  await page.getByTestId('setup').waitFor();
  expect(await page.locator('[name="part"]').inputValue()).toBe('Test bench 1');
});
