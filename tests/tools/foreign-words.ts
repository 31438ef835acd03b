import type { Page } from 'playwright-core';
import type { Language } from '../../web/words/phrasebook.ts';

const wordsOf = (text: string) => text.toLowerCase().match(/\p{L}{3,}/gu) ?? [];

/** Words that stand in the English texts of the page and in none of their translations. */
export function englishOnly(texts: Language): ReadonlySet<string> {
  const plain = (text: string) => wordsOf(text.replace(/\{\w+\}/g, ' '));
  const theirs = new Set(Object.values(texts).flatMap(plain));
  const ours = Object.keys(texts).flatMap(plain);
  return new Set(ours.filter((word) => !theirs.has(word)));
}

/** Every text on a page that shows a word of `foreign`: what is seen and what is read aloud. Names are no language. */
export async function foreignOn(
  page: Page,
  foreign: ReadonlySet<string>,
  names: readonly string[],
): Promise<string[]> {
  const texts = await page.evaluate(() => {
    const found: string[] = [document.title];
    const own = (element: Element | null) =>
      element?.closest('[translate="no"], [lang]:not(html), code, pre') !== null;
    const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walk.nextNode(); node; node = walk.nextNode()) {
      const element = node.parentElement;
      if (element && !own(element) && !['SCRIPT', 'STYLE'].includes(element.tagName))
        found.push(node.textContent ?? '');
    }
    for (const name of ['title', 'aria-label', 'placeholder', 'alt', 'aria-valuetext']) {
      for (const element of document.querySelectorAll(`[${name}]`)) {
        if (!own(element)) found.push(element.getAttribute(name) ?? '');
      }
    }
    return found;
  });
  const longestFirst = names.toSorted((a, b) => b.length - a.length);
  return [...new Set(texts)].filter((text) => {
    const rest = longestFirst.reduce(
      (left, name) => left.replaceAll(name.toLowerCase(), ' '),
      text.toLowerCase(),
    );
    return wordsOf(rest).some((word) => foreign.has(word));
  });
}
