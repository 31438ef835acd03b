import { describe, expect, test } from 'vitest';
import { demoScene } from '../../daemon/simulate/scenario.ts';
import { notices } from '../../shared/notice/notices.ts';
import { reduce } from '../../shared/reduce.ts';
import { demoSetups } from '../../shared/session/demo-setups.ts';
import { fold } from '../../shared/session/fold.ts';
import { resultOf } from '../../shared/session/result.ts';
import { type SetupInput, setupSchema } from '../../shared/session/setup.ts';
import { toSheet } from '../../shared/session/to-sheet.ts';
import { parseSheet } from '../../shared/sheet/sheet.ts';
import { Conductor } from '../tools/conduct.ts';
import { Coverage } from './coverage.ts';
import { judged } from './true-figures.ts';

/** Continuous sweeps: the tip slides on without a stop, stations are marked or lie at an even pace between two marks. */

const RUNS = 200;
/** From one station to the next, ms. */
const stepMs = 2500;

const slide: SetupInput = { ...demoSetups.slide, faces: 'top', stations: 6 };
const straightedge: SetupInput = { ...demoSetups.straightedge, stations: 6 };

async function conductorOf(input: SetupInput, seed: number): Promise<Conductor> {
  const setup = setupSchema.parse(input);
  return Conductor.of({ setup, scene: demoScene(setup), seed });
}

/** Sweeps every run of the plan without a stop. */
async function sweptAll(
  input: SetupInput,
  by: 'marks' | 'even',
  pace: number,
  seed: number,
): Promise<Conductor> {
  const conductor = await conductorOf(input, seed);
  while (conductor.session.next) await conductor.slide(by, pace);
  await conductor.end();
  return conductor;
}

describe.each([
  ['a slide out and back, each station marked', slide, 'marks', stepMs],
  ['a slide out and back, at an even pace between two marks', slide, 'even', stepMs],
  // On a worn way half a second must be little of the way.
  ['a straightedge and turned over, each station marked', straightedge, 'marks', 6000],
] as const)('%s', (_, input, by, pace) => {
  test(`lies within its stated uncertainty of the truth in 95 % of ${RUNS} surveys`, async () => {
    const coverage = new Coverage();
    for (let seed = 1; seed <= RUNS; seed += 1) {
      const { session, world } = await sweptAll(input, by, pace, seed);
      const result = resultOf(session);
      expect(reduce(parseSheet(JSON.stringify(toSheet(session))))).toEqual(result);
      coverage.count(judged(session.plan, world.truthUm(), result));
    }
    coverage.expectSound(RUNS);
  }, 120_000);

  test('every station is a take of its own readings, on record, and folds to the same session', async () => {
    const { session, events, header } = await sweptAll(input, by, pace, 3);
    expect(session.takes).toHaveLength(12);
    for (const { event } of session.takes) {
      expect(event.swept?.by).toBe(by);
      expect(event.swept?.way).toBe(event.place.run.endsWith('back') ? 'back' : 'out');
      const [first, last] = event.readings!;
      const used = events.filter((one) => one.type === 'reading' && one.seq >= first && one.seq <= last);
      const mean =
        used.reduce((sum, one) => sum + (one.type === 'reading' ? one.value! : 0), 0) / used.length;
      expect(used).toHaveLength(event.count);
      expect(event.value).toBeCloseTo(mean, 9);
      expect(Math.max(...used.map(({ m }) => Math.abs(m - event.swept!.atM)))).toBeLessThanOrEqual(250);
    }
    expect(session.sweeping).toBeNull();
    expect(fold(header, events)).toEqual(session);
    expect(notices(session, resultOf(session)).filter(({ warns }) => warns)).toEqual([]);
  });
});

test('stations are taken as they are marked, the next one named meanwhile; with the last the sweep is over', async () => {
  const conductor = await conductorOf(slide, 1);
  await conductor.slide('marks', stepMs);
  expect(conductor.session.takes.map(({ event }) => event.place.at[0])).toEqual([
    'T0',
    'T1',
    'T2',
    'T3',
    'T4',
    'T5',
  ]);
  expect(conductor.session.sweeping).toBeNull();
  // Where it has run on to nothing is taken without a hand.
  expect(conductor.session.handsFree).toBe(false);
  await conductor.pass(10_000);
  expect(conductor.session.takes).toHaveLength(6);
});

test('one station is taken back and marked again', async () => {
  const conductor = await conductorOf(slide, 2);
  await conductor.slide('marks', stepMs);
  const third = conductor.session.takes[2]!.event;
  await conductor.ask({ do: 'void', take: third.seq, reason: 'bumped' });
  expect(conductor.session.next).toEqual(third.place);
  await conductor.slide('marks', stepMs, 1);
  const { takes, next } = conductor.session;
  expect(takes.filter(({ out }) => out === undefined)).toHaveLength(6);
  expect(takes.find(({ event }) => event.seq === third.seq)?.out).toBe('bumped');
  expect(next?.run).toBe('top back');
});

test('a sweep that is too fast, or whose stream breaks off, takes nothing and says so', async () => {
  const conductor = await conductorOf(slide, 4);
  const refused: string[] = [];
  conductor.keeper.refused$.subscribe(({ message }) => refused.push(message));
  await conductor.slide('even', 200);
  expect(conductor.session.takes).toHaveLength(0);
  expect(conductor.session.sweeping).toBeNull();
  expect(refused).toEqual([
    'sweep: the tip went over T0 so fast that too few readings came; begin the sweep again where it broke off',
  ]);
  await conductor.ask({ do: 'sweep', by: 'marks' });
  await conductor.pass(500);
  conductor.lose();
  await conductor.pass(500);
  expect(conductor.session.sweeping).toBeNull();
  expect(refused[1]).toContain('the stream of readings broke off');
});

test('broken off between two marks, the sweep is begun again; what was taken before stays', async () => {
  const conductor = await conductorOf(slide, 5);
  await conductor.slide('even', stepMs);
  const before = conductor.session.takes;
  await conductor.pass(500);
  await conductor.ask({ do: 'sweep', by: 'even' });
  await conductor.pass(500);
  await conductor.ask({ do: 'take', by: 'pedal', insist: false });
  expect(conductor.session.sweeping).toEqual({ run: 'top back', by: 'even', begun: true });
  await conductor.interrupt();
  expect(conductor.session.sweeping).toBeNull();
  expect(conductor.session.takes).toEqual(before);
  await conductor.slide('even', stepMs);
  expect(conductor.session.next).toBeNull();
  const truth = conductor.world.truthUm();
  for (const { name, value, u, truth: due } of judged(
    conductor.session.plan,
    truth,
    resultOf(conductor.session),
  ))
    expect(Math.abs(value - due), name).toBeLessThan(4 * u + 1e-9);
});

test('what can not be slid on is refused: a level, and pins', async () => {
  for (const input of [demoSetups.way, demoSetups.dovetail]) {
    const conductor = await conductorOf(input, 1);
    await expect(conductor.ask({ do: 'sweep', by: 'marks' })).rejects.toMatchObject({
      code: 'command.refused',
    });
  }
});
