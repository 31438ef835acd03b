import { describe, expect, test } from 'vitest';
import { startDaemon } from '../daemon/daemon.ts';
import { plantedHand } from '../daemon/simulate/planted.ts';
import { seededRandom } from '../daemon/simulate/random.ts';
import { demoSetups } from '../shared/session/demo-setups.ts';
import { fold } from '../shared/session/fold.ts';
import { type Planted, plantableIn } from '../shared/session/planted.ts';
import { setupSchema } from '../shared/session/setup.ts';
import { firstSign } from '../web/state/first-sign.ts';
import { practiceSetup } from '../web/state/practice-setup.ts';
import { plantedSeen, plantedTold } from '../web/words/planted.ts';
import { PageClient } from './tools/page-client.ts';
import { readOnce, worldOf } from './tools/read-once.ts';
import { testFolder } from './tools/test-folder.ts';

test('a survey for practice has something planted on record, every other survey has not', async () => {
  const daemon = await startDaemon({ mode: 'demo', folder: testFolder(), port: 0 });
  const page = await PageClient.open(daemon.url);
  const setup = setupSchema.parse(demoSetups.way);
  expect(await page.ask({ do: 'start', setup, practice: ['moved'] })).toBeNull();
  await page.until(() => page.session !== null);
  expect(page.session!.header.simulated).toMatchObject({
    planted: 'moved',
    plantedAt: { run: 'front way out' },
  });
  const first = page.session!.header.id;
  expect(await page.ask({ do: 'leave' })).toBeNull();
  expect(await page.ask({ do: 'start', setup })).toBeNull();
  await page.until(() => page.session !== null && page.session.header.id !== first);
  expect(page.session!.header.simulated).not.toHaveProperty('planted');
  page.close();
  await daemon.close();
});

/** Constructed: every placement of a survey for practice read once, as it stands there with a fault planted. */
function practised(kind: keyof typeof demoSetups, planted: Planted, seed: number) {
  const input = practiceSetup(kind);
  const made = plantedHand(planted, worldOf(input), seededRandom(seed));
  const { header, events } = readOnce(input, made.setDown);
  const simulated = { scenario: 'made', truthUm: {}, planted, ...(made.at && { plantedAt: made.at }) };
  return fold({ ...header, simulated }, events);
}

/** What the readings show of what can be planted, where each is made once and the instrument is as steady as it is. */
const shows: Record<keyof typeof demoSetups, readonly Planted[]> = {
  way: ['chip', 'drift', 'heat', 'turned', 'skipped', 'doubled', 'moved'],
  bed: ['chip', 'drift', 'heat', 'turned', 'skipped', 'doubled', 'moved'],
  plate: ['chip', 'drift', 'heat', 'turned', 'skipped', 'doubled', 'moved'],
  slide: ['chip', 'drift', 'skipped', 'doubled', 'moved'],
  straightedge: ['chip'],
  // Nothing is read a second time in these.
  square: [],
  bar: [],
  dovetail: [],
  repeat: ['chip'],
  collars: [],
  face: ['chip'],
};

describe.each(Object.keys(demoSetups) as (keyof typeof demoSetups)[])('practice on a %s', (kind) => {
  const possible = plantableIn(setupSchema.parse(practiceSetup(kind)));
  const sign = (planted: Planted) => firstSign(practised(kind, planted, 1));

  test('what the readings can show is told from the reading that showed it; what they cannot is told so', () => {
    const found = possible.filter((planted) => sign(planted) !== null);
    expect(found).toEqual(shows[kind]);
    for (const planted of possible) {
      const session = practised(kind, planted, 1);
      const told = [plantedTold(planted), ...plantedSeen(session, firstSign(session))].join(' ');
      expect(told).not.toMatch(/undefined|[{}]/);
      if (planted === 'nothing') expect(told).toMatch(/worth as much\.$/);
      else if (found.includes(planted)) expect(told).toMatch(/could be seen from reading \d+ of \d+ on/);
      else expect(told).toMatch(/No reading of this survey shows it/);
      expect(/It was at/.test(told)).toBe(session.header.simulated?.plantedAt !== undefined);
    }
  });
});
