import type { Locator, Page } from 'playwright-core';
import { expect } from 'vitest';

/** Somebody who sees the page for the first time: does only what is in sight, and counts what was done. */
export class Visitor {
  readonly done: string[] = [];
  readonly #page: Page;

  constructor(page: Page) {
    this.#page = page;
  }

  /** Presses a control by the word that stands on it. */
  async press(word: string): Promise<void> {
    const control = this.#page
      .locator('button:visible, a:visible, summary:visible')
      .filter({ hasText: word })
      .first();
    await this.#inSight(control, word);
    await control.click();
    this.done.push(`press ${word}`);
  }

  /** Presses a key that is written on the page. */
  async key(key: string): Promise<void> {
    await this.#page.keyboard.press(key);
    this.done.push(`key ${key}`);
  }

  /** Types over a field that is found by its label. */
  async type(label: string, text: string): Promise<void> {
    const field = this.#page.getByRole('textbox', { name: label }).locator('visible=true').first();
    await this.#inSight(field, label);
    await field.fill(text);
    this.done.push(`type ${text} into ${label}`);
  }

  /** Waits until the page says it in its large sentence. */
  async reads(words: string): Promise<void> {
    const sentence = this.#page.getByTestId('sentence');
    await sentence
      .filter({ hasText: words })
      .waitFor()
      .catch(async () => {
        throw new Error(`"${words}" was waited for, and the page says "${await sentence.textContent()}"`);
      });
  }

  /** What is not in the window has to be scrolled to, which is one more thing to do. */
  async #inSight(what: Locator, name: string): Promise<void> {
    await what.waitFor({ state: 'visible' });
    const box = await what.boundingBox();
    const size = this.#page.viewportSize()!;
    if (box && box.y >= 0 && box.y + box.height <= size.height) return;
    await what.scrollIntoViewIfNeeded();
    this.done.push(`scroll to ${name}`);
    expect(await what.isVisible()).toBe(true);
  }
}
