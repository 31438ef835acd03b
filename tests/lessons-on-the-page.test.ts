import { readFile } from 'node:fs/promises';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { readRecording } from '../daemon/recording/reader.ts';
import { type Lesson, readLesson } from '../shared/lesson/lesson.ts';
import { fold } from '../shared/session/fold.ts';
import { resultOf } from '../shared/session/result.ts';
import { openBrowser } from './tools/browser.ts';
import { scenarios } from './tools/lessons/all.ts';
import { serveFolder } from './tools/static-server.ts';

/** The built page from a plain file server: there is no daemon anywhere in this file. */
let server: Awaited<ReturnType<typeof serveFolder>>;
let browser: Browser;
let context: BrowserContext;
let page: Page;
const wrongs: string[] = [];

beforeAll(async () => {
  server = await serveFolder('dist/web');
  browser = await openBrowser();
});
beforeEach(async () => {
  wrongs.length = 0;
  context = await browser.newContext({ viewport: { width: 1280, height: 800 }, acceptDownloads: true });
  page = await context.newPage();
  page.on('pageerror', (error) => wrongs.push(String(error)));
});
afterEach(async () => {
  expect(wrongs).toEqual([]);
  await context.close();
});
afterAll(async () => {
  await browser?.close();
  await server?.close();
});

const folder = 'recordings/lessons';
const lessonOf = async (id: string) => readLesson(await readFile(`${folder}/${id}.lesson.json`, 'utf8'));
/** Of the last event that is drawn, once everything that was pressed is drawn. */
async function seqShown(): Promise<number> {
  await page.evaluate(
    () =>
      new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(drawn, 0)))),
  );
  return Number(await page.getByTestId('root').getAttribute('data-seq'));
}

/** Presses the keys of somebody who goes through a lesson, and answers as a good hand would. */
async function goThrough(lesson: Lesson): Promise<void> {
  const open = lesson.moments.filter(({ is }) => is === 'stop');
  for (let n = 0; n < 400; n += 1) {
    const where = await page.evaluate(() =>
      ['lesson-end', 'lesson-asks'].find((id) => document.querySelector(`[data-testid="${id}"]`)),
    );
    if (where === 'lesson-end') return expect(open).toEqual([]);
    if (where !== 'lesson-asks') {
      await page.keyboard.press('ArrowRight');
      continue;
    }
    const stop = open.shift()!;
    expect(await page.getByTestId('lesson-asks').textContent()).toContain(stop.text);
    // What follows is hidden, whatever is pressed.
    for (const key of ['ArrowRight', 'End', ' ']) await page.keyboard.press(key);
    expect(await seqShown()).toBeLessThanOrEqual(stop.at);
    if (stop.is !== 'stop') continue;
    await page.getByTestId(`answer-${stop.right}`).click();
    await page.getByTestId('lesson-answered').waitFor();
    expect(await page.getByTestId('lesson-answered').textContent()).toContain(stop.because);
  }
  throw new Error('the lesson has no end');
}

describe('every lesson that ships runs through, with no daemon', () => {
  test.each(scenarios.map(({ id }) => id))('%s', async (id) => {
    const lesson = await lessonOf(id);
    await page.goto(`${server.url}#lesson=${id}`);
    await page.getByTestId('lesson-begin').waitFor();
    expect(await seqShown()).toBe(0);
    await goThrough(lesson);
    expect(await page.getByTestId('lesson-end').textContent()).toContain(lesson.seen);
    const { header, events } = await readRecording(`${folder}/${id}.jsonl`);
    expect(await seqShown()).toBe(events.at(-1)!.seq);
    // What is drawn at the end is what the recording comes to.
    const shown = await page.$$eval('tr[data-station]', (rows) =>
      rows.map((row) => [row.getAttribute('data-station'), Number(row.getAttribute('data-height-um'))]),
    );
    const { lines } = resultOf(fold(header, events), 'ends');
    for (const [name, heightUm] of shown) {
      const heights = Object.values(lines).flatMap(({ stations }) => stations[name as string] ?? []);
      if (header.setup.kind === 'way') expect(heights[0]!.heightUm).toBeCloseTo(heightUm as number, 6);
    }
    if (header.setup.kind === 'way') expect(shown.length).toBe(header.setup.stations);
  });
});

describe('files', () => {
  const recording = `${folder}/chip.jsonl`;

  test('a recording opens with the server stopped and the network off, and plays', async () => {
    const own = await serveFolder('dist/web');
    await page.goto(own.url);
    await page.getByTestId('open-file').waitFor({ state: 'attached' });
    await own.close();
    await context.setOffline(true);
    await page.getByTestId('open-file').setInputFiles(recording);
    await page.getByTestId('time-line').waitFor();
    expect(await seqShown()).toBe(0);
    await page.getByTestId('speed-100').click();
    await page.keyboard.press(' ');
    await page.locator('[data-testid="root"][data-view="result"]').waitFor();
    const { events } = await readRecording(recording);
    expect(await seqShown()).toBe(events.at(-1)!.seq);
    // Back to any take, and the session is what it was then.
    for (let n = 0; n < 5; n += 1) await page.keyboard.press('ArrowLeft');
    const shown = await seqShown();
    expect(events.find(({ seq }) => seq === shown)?.type).toMatch(/take|note|aim/);
  });

  test('a recording and its lesson are dropped on the page together', async () => {
    await page.goto(server.url);
    await page.getByTestId('lessons').waitFor();
    const texts = await Promise.all(
      ['chip.jsonl', 'chip.lesson.json'].map((name) => readFile(`${folder}/${name}`, 'utf8')),
    );
    const dropped = await page.evaluateHandle(([first, second]) => {
      const data = new DataTransfer();
      data.items.add(new File([first!], 'a.jsonl'));
      data.items.add(new File([second!], 'b.json'));
      return data;
    }, texts);
    await page.dispatchEvent('body', 'drop', { dataTransfer: dropped });
    expect(await page.getByTestId('lesson-begin').textContent()).toContain('A chip under one foot');
  });

  test('a lesson with a mistake is refused with the place of it', async () => {
    await page.goto(server.url);
    const lesson = JSON.parse(await readFile(`${folder}/chip.lesson.json`, 'utf8'));
    lesson.moments[2].right = 'hope';
    const file = {
      name: 'mine.json',
      mimeType: 'application/json',
      buffer: Buffer.from(JSON.stringify(lesson)),
    };
    await page.getByTestId('open-file').setInputFiles([file]);
    await page.getByTestId('refusal').waitFor();
    expect(await page.getByTestId('refusal').textContent()).toContain(
      'oments[2].right: "hope" is not possible',
    );
  });

  test('a file that is no recording is refused with its line', async () => {
    await page.goto(server.url);
    const lines = (await readFile(recording, 'utf8')).split('\n').with(7, 'spoilt');
    const file = { name: 'mine.jsonl', mimeType: '', buffer: Buffer.from(lines.join('\n')) };
    await page.getByTestId('open-file').setInputFiles([file]);
    await page.getByTestId('refusal').waitFor();
    expect(await page.getByTestId('refusal').textContent()).toContain('(mine.jsonl line 8: is not JSON)');
  });
});

test('a lesson is written on the page: pinned, tried, and saved as a file that is sound', async () => {
  await page.goto(server.url);
  await page.getByTestId('open-file').setInputFiles(`${folder}/drift.jsonl`);
  await page.getByTestId('time-line').waitFor();
  for (let n = 0; n < 3; n += 1) await page.keyboard.press('ArrowRight');
  const at = await seqShown();
  await page.keyboard.press('l');
  await page.locator('[name="pin-text"]').fill('see how it climbs');
  await page.locator('[name="pin-arrows"]').fill('F9 nowhere');
  await page.getByTestId('pin').click();
  expect(await page.getByTestId('lesson-wrong').textContent()).toContain('F9 is no station of this survey');
  await page.locator('[name="pin-arrows"]').fill('F3 here; F2');
  await page.getByTestId('pin').click();
  await page.locator('[name="title"]').fill('My lesson');
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByTestId('save-lesson').click(),
  ]);
  const saved = readLesson(await readFile(await download.path(), 'utf8'));
  expect(saved).toMatchObject({ title: 'My lesson', recording: 'drift' });
  expect(saved.moments).toEqual([
    {
      is: 'note',
      at,
      text: 'see how it climbs',
      arrows: [
        { to: 'F3', says: 'here' },
        { to: 'F2', says: '' },
      ],
    },
  ]);
});

test('a height lights the readings that make it; a suspect says why', async () => {
  await page.goto(server.url);
  await page.getByTestId('open-file').setInputFiles(`${folder}/chip.jsonl`);
  await page.getByTestId('time-line').waitFor();
  // All steps are read, the spoilt one not yet again.
  for (let n = 0; n < 16; n += 1) await page.keyboard.press('ArrowRight');
  await page.keyboard.press('w');
  await page.getByTestId('height-F4').first().click();
  await page.getByTestId('why').filter({ hasText: '16 readings make the height of F4' }).waitFor();
  expect(await page.locator('tr[style*="background"]').count()).toBe(16);
  await page.getByTestId('why-suspect').click();
  await page.getByTestId('why').filter({ hasText: 'That share is its redundancy.' }).waitFor();
});

test('two recordings of one part are held against each other', async () => {
  await page.goto(server.url);
  await page.getByTestId('open-file').setInputFiles(`${folder}/clean-walk.jsonl`);
  await page.getByTestId('time-line').waitFor();
  await page.keyboard.press('o');
  await page.getByTestId('beside-file').setInputFiles(`${folder}/sign-inverted.jsonl`);
  await page.getByTestId('habits').waitFor();
  expect(await page.getByTestId('compare').textContent()).toMatch(
    /7 of 9 stations differ, F4 most: by 4\d\.\d+ µm/,
  );
  await page.keyboard.press('Escape');
  await page.getByTestId('time-line').waitFor();
});
