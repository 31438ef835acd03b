import { describe, expect, test } from 'vitest';
import { demoScene } from '../../daemon/simulate/scenario.ts';
import { notices } from '../../shared/notice/notices.ts';
import { reduce } from '../../shared/reduce.ts';
import { demoSetups } from '../../shared/session/demo-setups.ts';
import { resultOf } from '../../shared/session/result.ts';
import { type SetupInput, setupSchema } from '../../shared/session/setup.ts';
import { toSheet } from '../../shared/session/to-sheet.ts';
import { parseSheet } from '../../shared/sheet/sheet.ts';
import { Conductor, type Hand, hastyPace } from '../tools/conduct.ts';
import { Coverage } from './coverage.ts';
import { proved, reseatSigma } from './reseat.ts';
import { judged } from './true-figures.ts';

/** What is turned over, and a dovetail, swept once more: nothing else would check the first sweep. */

const RUNS = 200;

const surveys: readonly SetupInput[] = [
  { ...demoSetups.straightedge, stations: 6 },
  demoSetups.square,
  { ...demoSetups.bar, stations: 3 },
  demoSetups.dovetail,
];

const sound: Hand = (place, _, world) => world.reading(place);

/** Every sweep of the plan, each as soon as the one that it repeats is done. */
async function sweptTwice(input: SetupInput, seed: number, hand = sound): Promise<Conductor> {
  const setup = setupSchema.parse(input);
  const conductor = await Conductor.of({ setup, scene: demoScene(setup), seed, pace: hastyPace, hand });
  for (const run of conductor.session.plan.runs) {
    if (!run.wanted) await conductor.ask({ do: 'run', run: run.id, on: true });
    while (conductor.session.next?.run === run.id) await conductor.place(conductor.session.next);
  }
  await conductor.end();
  return conductor;
}

describe.each(surveys.map((survey) => [survey.kind, survey] as const))('%s', (_, input) => {
  test(`lies within its stated uncertainty of the truth in 95 % of ${RUNS} surveys`, async () => {
    const plain = setupSchema.parse(input);
    const scene = demoScene(plain);
    const setup = proved(plain, await reseatSigma({ setup: plain, scene, seed: 4242 }, 1000));
    const coverage = new Coverage();
    for (let seed = 1; seed <= RUNS; seed += 1) {
      const { session, world } = await sweptTwice(setup, seed);
      const result = resultOf(session);
      expect(reduce(parseSheet(JSON.stringify(toSheet(session))))).toEqual(result);
      coverage.count(judged(session.plan, world.truthUm(), result));
    }
    coverage.expectSound(RUNS);
  }, 60_000);

  test('is surer than one sweep alone, and every reading is checked', async () => {
    const setup = proved(setupSchema.parse(input), input.instrument.unit === 'mm' ? 0.0001 : 0.1);
    const once = await Conductor.of({ setup, scene: demoScene(setup), seed: 5, pace: hastyPace });
    await once.walk();
    await once.end();
    const twice = await sweptTwice(setup, 5);
    const [one, two] = [resultOf(once.session), resultOf(twice.session)];
    const [line] = Object.keys(one.lines);
    const u = ({ figures, lines }: typeof one) =>
      Object.values(figures)[0]?.u ?? Object.values(lines[line!]!.stations)[1]!.uUm;
    expect(u(two) / u(one)).toBeCloseTo(Math.SQRT1_2, 9);
    expect(one.readings.every(({ redundancy }) => redundancy < 0.05)).toBe(true);
    expect(two.readings.every(({ redundancy }) => redundancy > 0.2)).toBe(true);
  });

  test('a chip under the tip is told once it was swept twice', async () => {
    const setup = proved(setupSchema.parse(input), input.instrument.unit === 'mm' ? 0.0001 : 0.1);
    const chip: Hand = (place, nth, world) => world.reading(place) + (nth === 1 ? 8 : 0);
    const { session } = await sweptTwice(setup, 6, chip);
    const told = notices(session, resultOf(session)).find(({ code }) => code === 'suspect');
    expect(told?.text).toContain(session.takes[1]!.event.place.at[0]);
  });
});
