import type { Page } from 'playwright-core';

/** More controls than any screen has. */
const enough = 150;

/** Goes on with Tab until what a selector names has the focus, as somebody without a mouse does. */
export async function tabTo(page: Page, selector: string): Promise<void> {
  await page.locator(selector).first().waitFor();
  for (let n = 0; n < enough; n += 1) {
    if (await hasFocus(page, selector)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`${selector} is not reached with the Tab key`);
}

/** Goes on with an arrow key until what a selector names has the focus: one of several that exclude each other. */
export async function arrowTo(page: Page, selector: string): Promise<void> {
  for (let n = 0; n < enough; n += 1) {
    if (await hasFocus(page, selector)) return;
    await page.keyboard.press('ArrowDown');
  }
  throw new Error(`${selector} is not reached with the arrow keys`);
}

/** Types over what stands in a field. */
export async function typeOver(page: Page, selector: string, text: string): Promise<void> {
  await tabTo(page, selector);
  await page.keyboard.press('Control+a');
  await page.keyboard.type(text);
}

const hasFocus = (page: Page, selector: string) =>
  page.evaluate((wanted) => document.activeElement?.matches(wanted) ?? false, selector);
