import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { JobFolder } from '../../daemon/job/job-folder.ts';
import { loadSurveys } from '../../daemon/job/load.ts';
import { verifyJob } from '../../daemon/job/verify-job.ts';
import { lineDifferences } from '../../shared/job/before-after.ts';
import { unlike } from '../../shared/job/unlike.ts';
import { rebuildSummary, rebuildWay } from '../tools/rebuild.ts';
import { testFolder } from '../tools/test-folder.ts';
import { wornFrontWay } from '../tools/worn-front-way.ts';

const seeds = [1, 2, 3, 4, 5, 6];

test.each(seeds)('a way of 40 µm comes within its limit in the rounds foreseen (seed %i)', async (seed) => {
  const folder = await JobFolder.create(join(testFolder(), 'job'), { part: 'bed', owner: '' });
  const { foreseen, rounds, bites } = await rebuildWay(folder, { ...wornFrontWay, seed, t: 0 });
  const { surveys } = await loadSurveys(folder);

  const [asFound, asLeft] = [surveys[0]!, surveys.at(-1)!];
  const straightness = ({ result }: typeof asFound) => result.lines['front way']!.straightness.ends;
  expect(straightness(asFound).valueUm).toBeGreaterThan(38);
  expect(straightness(asFound).valueUm).toBeLessThan(42);
  expect(asLeft.result.verdicts).toMatchObject([{ verdict: 'within', limit: 10 }]);
  expect(Math.abs(rounds - foreseen), `${rounds} rounds, ${foreseen} foreseen`).toBeLessThanOrEqual(1);

  const passes = bites.length;
  expect(passes).toBe(rounds);
  const weight = bites.reduce((sum, { uUm }) => sum + uUm ** -2, 0);
  const mean = bites.reduce((sum, { biteUm, uUm }) => sum + biteUm * uUm ** -2, 0) / weight;
  expect(Math.abs(mean / wornFrontWay.hand.biteUm - 1), `bite ${mean} µm`).toBeLessThan(0.1);
  expect((await verifyJob(folder.path)).problems).toEqual([]);
});

describe('the invented rebuild in recordings/', () => {
  const path = join(import.meta.dirname, '..', '..', 'recordings', 'rebuild');

  test('is as it was written', async () => {
    const { problems, files } = await verifyJob(path);
    expect(problems).toEqual([]);
    expect(files.length).toBeGreaterThanOrEqual(8);
  });

  test('comes to what it came to when it was looked at', async () => {
    const summary = await rebuildSummary(await JobFolder.open(path));
    const golden = JSON.parse(await readFile(`${path}.summary.json`, 'utf8'));
    expect(JSON.parse(JSON.stringify(summary))).toEqual(golden);
  });

  test('runs from 40 µm to within the limit, and says what was not alike', async () => {
    const surveys = (await loadSurveys(await JobFolder.open(path))).surveys.filter(
      ({ record }) => record.surface === 'front way',
    );
    const [asFound, asLeft] = [surveys[0]!, surveys.at(-1)!];
    expect(asFound.result.verdicts).toMatchObject([{ verdict: 'outside' }]);
    expect(asLeft.result.verdicts).toMatchObject([{ verdict: 'within' }]);
    expect(unlike(asFound, asLeft).map(({ what }) => what)).toEqual(['person', 'iron', 'air']);

    const names = asFound.sheet.lines['front way']!;
    const stations = lineDifferences(asFound.heights, asLeft.heights, names, 'ends');
    const lowest = stations.reduce((a, b) => (b.before.value < a.before.value ? b : a));
    expect(lowest.difference.same).toBe(false);
    expect(lowest.difference.value).toBeGreaterThan(30);
    // Both ends lie on the line through the ends, before and after.
    expect(stations[0]!.difference).toEqual({ value: 0, u: 0, same: true });
  });
});
