import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { addFile } from '../../daemon/job/add-file.ts';
import { JobFolder } from '../../daemon/job/job-folder.ts';
import { makeReport } from '../../daemon/job/make-report.ts';
import { verifyJob } from '../../daemon/job/verify-job.ts';
import { html, table } from '../../shared/report/html.ts';
import { openBrowser } from '../tools/browser.ts';
import { cutOn, papers } from '../tools/cut-on-paper.ts';
import { testFolder } from '../tools/test-folder.ts';

const rebuild = join(import.meta.dirname, '..', '..', 'recordings', 'rebuild');
const made = { by: 'a test', at: '2026-03-10T08:00:00Z' };

describe('the report of the invented rebuild', () => {
  let text = '';
  let browser: Browser;
  beforeAll(async () => {
    text = await makeReport(await JobFolder.open(rebuild), made);
    browser = await openBrowser();
  });
  afterAll(() => browser.close());

  test('needs nothing but itself, and no script', () => {
    expect(text.match(/<script|<link|<img|@import|url\((?!#|data:)/g)).toBeNull();
    const read = text.slice(0, text.indexOf('<!-- wayscribe'));
    expect(read.match(/NaN|undefined|null|Infinity|\[object/g)).toBeNull();
    expect(text.length).toBeLessThan(250_000);
  });

  test('is the same again, byte for byte', async () => {
    expect((await makeReport(await JobFolder.open(rebuild), made)) === text).toBe(true);
  });

  test.each([
    'As found',
    'as left',
    'Allowed',
    'Sure to',
    'What was not alike',
    'Worksheet',
    'SHA-256',
    'Signed',
    'Local rules and qualified people decide',
  ])('says %s', (words) => expect(text).toContain(words));

  test.each(papers)('nothing is cut on %s', async (_, widthPx) => {
    expect(await cutOn(browser, text, widthPx)).toEqual([]);
  });

  // Looked at page by page; a page more is a page that nobody has looked at.
  test.each([
    ['A4', 7],
    ['Letter', 7],
  ] as const)('prints on %s in %i pages, numbered', async (format, pages) => {
    const page = await browser.newPage();
    await page.setContent(text);
    const pdf = await page.pdf({ format, printBackground: true });
    expect(pdf.toString('latin1').match(/\/Type \/Page\b/g)).toHaveLength(pages);
    await page.close();
  });

  test('is verified with its job; a changed figure, or another job, is found', async () => {
    const folder = testFolder();
    const report = join(folder, 'report.html');
    await writeFile(report, text);
    expect((await verifyJob(rebuild, [report])).problems).toEqual([]);
    await writeFile(report, text.replace('39.9', '29.9'));
    expect((await verifyJob(rebuild, [report])).problems).toEqual([
      { file: report, what: 'was changed: its seal does not match' },
    ]);
    await writeFile(report, text);
    const other = await JobFolder.create(join(folder, 'other'), { part: 'another', owner: '' });
    expect((await verifyJob(other.path, [report])).problems[0]!.what).toContain('rests on another');
  });
});

test('names are text, whatever they hold', async () => {
  const { markup } = html`<p>${'<script>alert("1")</script>'}</p>${table(['a & b'], [['<i>']])}`;
  expect(markup).toContain('&lt;script&gt;alert(&quot;1&quot;)&lt;/script&gt;');
  expect(markup).toContain('a &amp; b');
  const path = join(testFolder(), 'job');
  await mkdir(path);
  const folder = await JobFolder.create(path, { part: '</title><script>x</script>--><b>', owner: '-->' });
  const text = await makeReport(folder, { ...made, by: '<b>' });
  expect(text.match(/<script|<b>/g)).toBeNull();
  expect(await readFile(join(path, 'job.json'), 'utf8')).toContain('"changes":[');
});

describe('a job that is not done', () => {
  const stamp = { at: made.at, by: made.by };

  test('before the first survey its report is the sheet of what is agreed', async () => {
    const folder = await JobFolder.create(join(testFolder(), 'job'), { part: 'bed', owner: 'b' });
    const limits = [{ figure: 'rear way.straightness', max: 12, source: 'sheet of the maker' }];
    await folder.add(
      { ...stamp, change: 'surface', surface: 'rear way', madeFrom: [] },
      { ...stamp, change: 'limits', surface: 'rear way', limits },
    );
    const text = await makeReport(folder, made);
    for (const words of ['Straightness of rear way', 'sheet of the maker', 'not measured yet', 'Signed']) {
      expect(text.includes(words), words).toBe(true);
    }
  });

  test('passes after the newest survey make its plan an old one, and that is said', async () => {
    const folder = await JobFolder.create(join(testFolder(), 'job'), { part: 'bed', owner: '' });
    await addFile(folder, join(rebuild, 'front-way-as-found.jsonl'), stamp);
    expect((await makeReport(folder, made)).includes('Scrape: front way')).toBe(true);
    await folder.add({ ...stamp, change: 'passes', surface: 'front way', passes: [['F0'], ['F0', 'F1']] });
    const text = await makeReport(folder, made);
    expect(text.includes('2 passes were scraped since: measure again before you go on')).toBe(true);
  });

  test('what was made from a surface that was scraped since is marked', async () => {
    const folder = await JobFolder.create(join(testFolder(), 'job'), { part: 'bed', owner: '' });
    await addFile(folder, join(rebuild, 'front-way-as-found.jsonl'), stamp);
    await addFile(folder, join(rebuild, 'tailstock-way-as-found.json'), stamp);
    await folder.add(
      { ...stamp, change: 'surface', surface: 'tailstock way', madeFrom: ['front way'] },
      { ...stamp, change: 'passes', surface: 'front way', passes: [['F0']] },
    );
    expect((await makeReport(folder, made)).includes('▲ Check it again: front way was scraped')).toBe(true);
  });
});
