import type { Browser } from 'playwright-core';

const marginsMm = 24;

/** What is written on by its name, and the width between the margins of the report, CSS pixels of 1/96 in. */
export const papers: readonly [string, number][] = [
  ['A4', (210 - marginsMm) / 25.4],
  ['Letter', 8.5 - marginsMm / 25.4],
].map(([name, inches]) => [name as string, Math.round(96 * (inches as number))]);

/** Every text of a report that reaches out of its paper, its cell or its drawing; empty when nothing is cut. */
export async function cutOn(browser: Browser, html: string, widthPx: number): Promise<string[]> {
  const page = await browser.newPage({ viewport: { width: widthPx, height: 900 } });
  await page.emulateMedia({ media: 'print' });
  await page.setContent(html);
  const cut = await page.evaluate(() => {
    const width = document.documentElement.clientWidth;
    const outside = [
      ...document.querySelectorAll('td, th, p, h1, h2, h3, li, figcaption, svg, .title-block div'),
    ].filter(
      (each) => each.scrollWidth > each.clientWidth + 1 || each.getBoundingClientRect().right > width + 1,
    );
    const texts = [...document.querySelectorAll('svg.drawing text')].filter((each) => {
      const [inner, outer] = [each.getBoundingClientRect(), each.closest('svg')!.getBoundingClientRect()];
      return inner.left < outer.left - 1 || inner.right > outer.right + 1 || inner.bottom > outer.bottom + 1;
    });
    return [...outside, ...texts].map((each) => each.textContent?.slice(0, 60) ?? '');
  });
  await page.close();
  return cut;
}
