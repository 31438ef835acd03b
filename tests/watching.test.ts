import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Daemon, startDaemon } from '../daemon/daemon.ts';
import { pairUrl } from '../daemon/server/lan.ts';
import { openBrowser } from './tools/browser.ts';
import { strangerAddress } from './tools/stranger.ts';

describe.runIf(process.platform === 'linux')('the page on a device in the network', () => {
  let folder = '';
  let daemon: Daemon;
  let browser: Browser;
  let local: Page;
  let tablet: Page;

  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'wayscribe-'));
    daemon = await startDaemon({ mode: 'demo', folder, port: 0, lan: true });
    browser = await openBrowser();
    local = await (await browser.newContext()).newPage();
    tablet = await (await browser.newContext({ viewport: { width: 768, height: 1024 } })).newPage();
    await local.goto(daemon.url);
    await tablet.goto(`http://${strangerAddress}:${daemon.port}/`);
  });
  afterAll(async () => {
    await browser?.close();
    await daemon?.close();
    await rm(folder, { recursive: true, force: true });
  });

  test('watches: it says why, offers nothing to press, and no key does anything', async () => {
    await tablet.getByTestId('watching').waitFor();
    expect(await tablet.getByTestId('demo').count()).toBe(0);
    await local.getByTestId('demo').click();
    await tablet.locator('[data-testid="root"][data-view="survey"]').waitFor();
    for (const id of ['take', 'undo', 'skip', 'note', 'hands-free', 'finish']) {
      expect(await tablet.getByTestId(id).isDisabled(), id).toBe(true);
    }
    expect(await tablet.getByTestId('sim-walk').count()).toBe(0);
    for (const key of ['Space', 'z', 's', 'f', 'h', 'n']) await tablet.keyboard.press(key);
    expect(await tablet.locator('[role="alert"]').count()).toBe(0);
    await tablet.waitForFunction(() => document.querySelectorAll('tr[data-station]').length >= 3);
  });

  test('is paired by the address that it is shown, once, and appears in the list', async () => {
    await local.keyboard.press('i');
    await local.getByTestId('devices-list').waitFor();
    const { token } = daemon.pairing!.invite();
    const address = pairUrl(strangerAddress, daemon.port, token);
    await tablet.goto(address);
    await tablet.getByTestId('watching').waitFor({ state: 'detached' });
    await tablet.locator('[data-testid="finish"]:enabled').waitFor();
    expect(new URL(tablet.url()).hash).toBe('');
    expect(await tablet.evaluate(() => document.cookie)).toBe('');

    const second = await (await browser.newContext()).newPage();
    await second.goto(address);
    expect(await second.getByTestId('watching').textContent()).toContain('used before');
    await second.close();
  });

  test('watches again as soon as that is taken away on the computer', async () => {
    await local.keyboard.press('Escape');
    await local.getByTestId('devices-list').waitFor({ state: 'detached' });
    await local.keyboard.press('i');
    await local.getByRole('button', { name: 'Take control away' }).click();
    await tablet.getByTestId('watching').waitFor();
    expect(await tablet.getByTestId('finish').isDisabled()).toBe(true);
    expect(await local.getByTestId('devices-list').textContent()).toContain('None was paired');
  });
});
