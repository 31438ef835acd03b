import { expect, onTestFinished, test } from 'vitest';
import { openBrowser } from './tools/browser.ts';
import { DaemonProcess } from './tools/daemon-process.ts';
import { testFolder } from './tools/test-folder.ts';
import { Visitor } from './tools/visitor.ts';

test('from the first look at the demo to the report of an own survey of eight stations: at most 25 actions', async () => {
  const began = performance.now();
  const daemon = await DaemonProcess.start('demo', '--folder', testFolder(), '--pace', '50');
  const browser = await openBrowser();
  onTestFinished(async () => {
    await browser.close();
    await daemon.stop();
  });
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  const page = await context.newPage();
  const visitor = new Visitor(page);
  await page.goto(daemon.url);
  visitor.done.push('open the page');

  await visitor.press('Set up a survey');
  await visitor.type('Machine or part', 'My lathe');
  await visitor.type('Way', 'front way');
  await visitor.type('Length of the way', '1400');
  await visitor.type('Stations', '8');
  await visitor.type('Foot spacing', '200');
  await visitor.press('Start');
  await visitor.press('Walk by itself');
  await visitor.reads('The way out is read');
  await visitor.press('Walk back');
  await visitor.press('Walk by itself');
  await visitor.reads('Out and back are read');
  await visitor.press('Finish');
  await visitor.press('Finish');
  await visitor.reads('Front way');
  await visitor.press('Report');
  await page.locator('main[data-sheet="papers"]').waitFor();
  const opened = context.waitForEvent('page');
  await visitor.press('Report');
  const report = await opened;
  await report.getByRole('heading', { name: 'My lathe' }).waitFor();
  expect(await report.locator('body').textContent()).toContain('F7');

  console.log(
    `${visitor.done.length} actions in ${Math.round((performance.now() - began) / 1000)} s: ${visitor.done.join('; ')}`,
  );
  expect(visitor.done.length).toBeLessThanOrEqual(25);
});
