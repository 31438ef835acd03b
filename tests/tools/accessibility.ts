import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { Browser, Page } from 'playwright-core';
import { expect } from 'vitest';

const sizes = [
  { width: 1280, height: 800 },
  { width: 768, height: 1024 },
];

interface Violation {
  readonly id: string;
  readonly nodes: readonly { readonly target: readonly string[] }[];
}

/** A page at an address, with axe-core in it: brought in from outside, which the page itself would refuse. */
export async function checkedPage(browser: Browser, url: string): Promise<Page> {
  const page = await browser.newPage({ bypassCSP: true, reducedMotion: 'reduce' });
  await page.goto(url);
  const axe = createRequire(import.meta.url).resolve('axe-core/axe.min.js');
  await page.addScriptTag({ content: await readFile(axe, 'utf8') });
  return page;
}

/** Nothing that axe-core finds fault with, on paper and on slate, on a desktop and on a tablet; and nothing too wide. */
export async function expectClean(page: Page): Promise<void> {
  for (const size of sizes) {
    await page.setViewportSize(size);
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      const found = await page.evaluate(async () => {
        const { violations } = await (
          window as unknown as { axe: { run(): Promise<{ violations: Violation[] }> } }
        ).axe.run();
        return violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${target.join(' ')}`));
      });
      expect(found, `${size.width} px, ${colorScheme}`).toEqual([]);
      const wide = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      expect(wide, `scrolls sideways at ${size.width} px`).toBeLessThanOrEqual(0);
    }
  }
}
