// `npm run shots [SCENE…]`: pictures of every screen, or of the scenes named, and a page to look through them.

import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { openBrowser } from '../browser.ts';
import { galleryOf } from './gallery.ts';
import { type Scene, scenes, scenesOfServe } from './scenes.ts';
import { type Shot, Studio } from './studio.ts';

const folder = resolve('.shots');
const wanted = process.argv.slice(2);
const known = [...Object.keys(scenes), ...Object.keys(scenesOfServe)];
const unknown = wanted.filter((name) => !known.includes(name));
if (unknown.length > 0) {
  console.error(`There is no scene "${unknown[0]}". The scenes are: ${known.join(', ')}.`);
  process.exit(2);
}

const recordings = await mkdtemp(join(tmpdir(), 'wayscribe-shots-'));
const browser = await openBrowser();
const shots: Shot[] = [];
try {
  if (wanted.length === 0) await rm(folder, { recursive: true, force: true });
  await mkdir(folder, { recursive: true });
  // As fast as the simulated hand can be: only what comes of it is looked at.
  await play(scenes, 'demo', '--pace', '100');
  await play(scenesOfServe, 'serve');
  await writeFile(join(folder, 'index.html'), galleryOf(shots));
  console.log(`${shots.length} pictures: ${join(folder, 'index.html')}`);
} finally {
  await browser.close();
  await rm(recordings, { recursive: true, force: true });
}

async function play(of: Readonly<Record<string, Scene>>, mode: string, ...args: string[]): Promise<void> {
  const names = Object.keys(of).filter((name) => wanted.length === 0 || wanted.includes(name));
  if (names.length === 0) return;
  const page = await browser.newPage();
  page.setDefaultTimeout(20_000);
  const studio = await Studio.open(page, folder, mode, '--folder', join(recordings, mode), ...args);
  try {
    for (const name of names) {
      await studio.start();
      await of[name]!(studio);
      console.log(name);
    }
  } finally {
    shots.push(...studio.shots);
    await studio.close();
  }
}
