// Draws web/public/icon-*.png from icon.svg: what some systems want of an installed page.
import { readFile, writeFile } from 'node:fs/promises';
import { openBrowser } from './browser.ts';

const drawing = await readFile('web/public/icon.svg', 'utf8');
const browser = await openBrowser();
for (const sizePx of [192, 512]) {
  const page = await browser.newPage({ viewport: { width: sizePx, height: sizePx } });
  await page.setContent(`<style>body { margin: 0 } svg { display: block; width: 100vw }</style>${drawing}`);
  await writeFile(`web/public/icon-${sizePx}.png`, await page.screenshot());
}
await browser.close();
