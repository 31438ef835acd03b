import { expect, test } from 'vitest';
import { startDaemon } from '../daemon/daemon.ts';
import { demoSetups } from '../shared/session/demo-setups.ts';
import { plantedFaults } from '../shared/session/planted.ts';
import { setupSchema } from '../shared/session/setup.ts';
import { PageClient } from './tools/page-client.ts';
import { testFolder } from './tools/test-folder.ts';

test('a survey for practice has something planted on record, every other survey has not', async () => {
  const daemon = await startDaemon({ mode: 'demo', folder: testFolder(), port: 0 });
  const page = await PageClient.open(daemon.url);
  const setup = setupSchema.parse(demoSetups.way);
  expect(await page.ask({ do: 'start', setup, practice: true })).toBeNull();
  await page.until(() => page.session !== null);
  expect(plantedFaults).toContain(page.session!.header.simulated!.planted);
  const first = page.session!.header.id;
  expect(await page.ask({ do: 'leave' })).toBeNull();
  expect(await page.ask({ do: 'start', setup })).toBeNull();
  await page.until(() => page.session !== null && page.session.header.id !== first);
  expect(page.session!.header.simulated).not.toHaveProperty('planted');
  page.close();
  await daemon.close();
});
