import { describe, expect, test } from 'vitest';
import { demoScene, demoSetups } from '../../daemon/simulate/scenario.ts';
import { World } from '../../daemon/simulate/world.ts';
import { reduce } from '../../shared/reduce.ts';
import { resultOf } from '../../shared/session/result.ts';
import { type SetupInput, setupSchema } from '../../shared/session/setup.ts';
import { toSheet } from '../../shared/session/to-sheet.ts';
import { parseSheet, type SheetInput, validateSheet } from '../../shared/sheet/sheet.ts';
import { Conductor, hastyPace } from '../tools/conduct.ts';
import { Coverage } from './coverage.ts';
import { proved, reseatSigma } from './reseat.ts';
import { judged } from './true-figures.ts';

const RUNS = 200;
const RESEATS = 1000;

/** Fewer stations than in the demo: the same kind, sooner done. Out and back, or turned, as the plan wants it. */
const surveys: readonly SetupInput[] = [
  { ...demoSetups.way, stations: 7, lengthMm: 1800, baseMm: 300, back: 'same' },
  { ...demoSetups.bed, stations: 5, lengthMm: 1600, baseMm: 400 },
  { ...demoSetups.plate, baseMm: 200 },
  { ...demoSetups.slide, stations: 5 },
  { ...demoSetups.straightedge, stations: 6 },
  demoSetups.square,
  { ...demoSetups.bar, stations: 3 },
  demoSetups.dovetail,
  { ...demoSetups.repeat, rows: 2, stations: 4 },
  demoSetups.collars,
  demoSetups.face,
];

describe.each(surveys.map((survey) => [survey.kind, survey] as const))('%s', (_, input) => {
  const plain = setupSchema.parse(input);
  const scene = demoScene(plain);
  const world = new World(plain, scene);
  const truth = world.truthUm();

  test('perfect readings give the true shape', async () => {
    const conductor = await Conductor.of({ setup: plain, scene, seed: 1, pace: hastyPace });
    await conductor.walk();
    await conductor.end();
    const result = reduce(validateSheet(withoutNoise(toSheet(conductor.session), world)));
    for (const { name, value, truth: due } of judged(world.plan, truth, result)) {
      expect(Math.abs(value - due), name).toBeLessThan(1e-6);
    }
  });

  test(`lies within its stated uncertainty of the truth in 95 % of ${RUNS} surveys`, async () => {
    const sigma = await reseatSigma({ setup: plain, scene, seed: 4242 }, RESEATS);
    const setup = proved(plain, sigma);
    const coverage = new Coverage();
    for (let seed = 1; seed <= RUNS; seed += 1) {
      const conductor = await Conductor.of({ setup, scene, seed, pace: hastyPace });
      await conductor.walk();
      await conductor.end();
      const result = resultOf(conductor.session);
      expect(reduce(parseSheet(JSON.stringify(toSheet(conductor.session))))).toEqual(result);
      coverage.count(judged(world.plan, truth, result));
    }
    coverage.expectSound(RUNS);
  });
});

/** The sheet with the readings of a perfect instrument in place of those that were taken. */
function withoutNoise(sheet: SheetInput, world: World): SheetInput {
  return {
    ...sheet,
    walks: (sheet.walks ?? []).map((walk) => ({
      ...walk,
      readings: walk.readings.map(([from, to]) => [
        from,
        to,
        world.reading({ run: walk.id, at: [from, to] }),
      ]),
    })),
    sweeps: (sheet.sweeps ?? []).map((sweep) => ({
      ...sweep,
      readings: sweep.readings.map(([at]) => [at, perfectHeight(world, sweep.id, at)]),
    })),
  };
}

/** As the sheet has it: the bar does not hang down any more. */
function perfectHeight(world: World, run: string, at: string): number {
  const planned = world.plan.runs.find(({ id }) => id === run)!;
  const { xMm } = world.plan.stations.find(({ name }) => name === at)!;
  const sag = planned.line === 'top' ? (world.scene.sag?.(xMm) ?? 0) : 0;
  const sense = planned.reads === 'height' ? planned.sense : 1;
  return world.reading({ run, at: [at] }) + sense * sag;
}
