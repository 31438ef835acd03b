import { execFile } from 'node:child_process';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import type { Setup } from '../../shared/session/setup.ts';
import type { Result } from '../../shared/sheet/result.ts';

/** What is filled in on the page where the demo's own set-up has something else. */
export interface FilledIn {
  readonly kind: Setup['kind'];
  readonly sigma: number;
  readonly fields: Readonly<Record<string, string>>;
  readonly choices?: Readonly<Record<string, string>>;
}

/** Fills in the set-up and starts the survey. */
export async function setUp(page: Page, { kind, sigma, fields, choices = {} }: FilledIn): Promise<void> {
  await page.getByTestId('set-up').click();
  await page.getByTestId(`kind-${kind}`).check();
  for (const [name, value] of Object.entries({ ...fields, sigma: String(sigma) }))
    await page.locator(`[name="${name}"]`).fill(value);
  for (const [name, value] of Object.entries(choices))
    await page.locator(`[name="${name}"]`).selectOption(value);
  await page.getByTestId('start').click();
  await page.locator('[data-testid="root"][data-view="survey"]').waitFor();
}

/** Waits until everything is read, and finishes. */
export async function finish(page: Page): Promise<void> {
  await page.locator('[data-testid="finish"].main').waitFor({ timeout: 100_000 });
  await page.keyboard.press('f');
  await page.getByTestId('finish-yes').click();
  await page.locator('[data-testid="root"][data-view="result"]').waitFor();
}

/** The sheet and the recording as the links beside the result give them. */
export async function takeHome(page: Page, folder: string) {
  const saved = async (link: string, name: string) => {
    const response = await page.request.get(
      new URL((await page.getByTestId(link).getAttribute('href'))!, page.url()).href,
    );
    expect(response.ok()).toBe(true);
    const path = join(folder, name);
    await writeFile(path, await response.body());
    return path;
  };
  return {
    sheetPath: await saved('export-sheet', 'home-sheet.json'),
    recordingPath: await saved('export-recording', 'home.jsonl'),
  };
}

/** What `wayscribe reduce` says of a file. */
export async function reduced(path: string): Promise<Result> {
  const args = ['dist/wayscribe.js', 'reduce', path, '--json'];
  return JSON.parse((await promisify(execFile)(process.execPath, args)).stdout) as Result;
}
