import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { makeReport } from '../../daemon/job/make-report.ts';
import { demoSetups } from '../../daemon/simulate/scenario.ts';
import { openBrowser } from '../tools/browser.ts';
import { cutOn, papers } from '../tools/cut-on-paper.ts';
import { bedSetup, madeUpJob, plateSetup } from '../tools/made-up-job.ts';
import { testFolder } from '../tools/test-folder.ts';

const made = { by: 'a test', at: '2026-03-10T08:00:00Z' };

describe('the report of a job of every kind', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser.close());

  test.each([
    [bedSetup, { 'front.straightness': 6, 'rear.straightness': 6, twist: 20 }],
    [plateSetup, { flatness: 4 }],
    [demoSetups.slide, {}],
    [demoSetups.straightedge, {}],
    [demoSetups.square, {}],
    [demoSetups.bar, {}],
    [demoSetups.dovetail, {}],
  ])('$kind', async (setup, limits) => {
    for (const last of ['as found', 'in work 1', 'as left'] as const) {
      const folder = await madeUpJob(join(testFolder(), 'job'), setup, limits, last);
      const text = await makeReport(folder, made);
      const read = text.slice(0, text.indexOf('<!-- wayscribe'));
      expect(read.match(/NaN|undefined|null|Infinity|\[object/g)).toBeNull();
      expect(read).toContain('</figure>');
      for (const [paper, widthPx] of papers) {
        expect(await cutOn(browser, text, widthPx), `${last} on ${paper}`).toEqual([]);
      }
    }
  });
});
