import { expect, test } from 'vitest';
import { demoScene } from '../../daemon/simulate/scenario.ts';
import { notices } from '../../shared/notice/notices.ts';
import { reduce } from '../../shared/reduce.ts';
import { demoSetups } from '../../shared/session/demo-setups.ts';
import { fold } from '../../shared/session/fold.ts';
import { resultOf } from '../../shared/session/result.ts';
import { setupSchema } from '../../shared/session/setup.ts';
import { toSheet } from '../../shared/session/to-sheet.ts';
import { parseSheet } from '../../shared/sheet/sheet.ts';
import { Conductor, type Hand, hastyPace, type MadeUp } from '../tools/conduct.ts';
import { Coverage } from './coverage.ts';
import { proved, reseatSigma } from './reseat.ts';
import { judged } from './true-figures.ts';

/** A level that is proved; its take is sure to so much, µm/m. */
const sigma = 0.3;

function aWay(back: 'no' | 'same' | 'turned', more: Partial<MadeUp> = {}): MadeUp {
  const setup = setupSchema.parse({
    ...demoSetups.way,
    back,
    instrument: { ...demoSetups.way.instrument, sigma },
  });
  return { setup, scene: demoScene(setup), seed: 11, pace: hastyPace, ...more };
}

const told = ({ session }: Conductor) => notices(session, resultOf(session)).map(({ code }) => code);

function expectTrue({ session, world }: Conductor): void {
  const result = resultOf(session);
  expect(reduce(parseSheet(JSON.stringify(toSheet(session))))).toEqual(result);
  for (const { name, value, u, truth } of judged(session.plan, world.truthUm(), result))
    expect(Math.abs(value - truth), name).toBeLessThan(Math.max(4 * u, 1e-6));
}

test('a level turned in mid-walk is read right from where that was said', async () => {
  const turnedFrom = 5;
  const conductor = await Conductor.of(
    aWay('same', {
      hand: (place, nth, world) =>
        (place.run === 'front way out' && nth >= turnedFrom ? -1 : 1) * world.reading(place),
    }),
  );
  for (let k = 0; k < turnedFrom; k += 1) await conductor.place(conductor.session.next!);
  await conductor.ask({ do: 'turned' });
  expect(conductor.session.turnedRun).toBe('front way out');
  await conductor.walk();
  await conductor.end();
  expect(conductor.session.turnedTakes.size).toBe(12 - turnedFrom);
  expectTrue(conductor);
  const { walks, notes } = toSheet(conductor.session);
  expect(walks!.map(({ id, facing }) => [id, facing])).toEqual([
    ['front way out', 1],
    ['front way out, level turned', -1],
    ['front way back', 1],
  ]);
  expect(notes).toMatch(/^Read with the level turned in mid-walk: F5 – F6, .*F11 – F12\.$/);
  expect(told(conductor)).not.toContain('slip');
  expect(fold(conductor.header, conductor.events)).toEqual(conductor.session);
});

/** The level is turned in the middle of the only walk, and it is said: from the fifth place on it faces the start. */
async function turnedOnTheOnlyWalk(seed = 11): Promise<Conductor> {
  const conductor = await Conductor.of(aWay('no', { seed, hand: asItFaces(5) }));
  for (let k = 0; k < 5; k += 1) await conductor.place(conductor.session.next!);
  await conductor.ask({ do: 'turned' });
  await conductor.walk();
  return conductor;
}

/** What it reads when it faces the other way from the nth place of the way out on. */
const asItFaces =
  (from: number): Hand =>
  (place, nth, world) =>
    (place.run === 'front way out' && nth >= from ? -1 : 1) * world.reading(place);

const turnedAlone = ({ session }: Conductor) =>
  notices(session, resultOf(session)).find(({ code }) => code === 'turned-alone');

test('turned in the middle of the only walk, a kink looks like the zero: that is said, not guessed', async () => {
  const conductor = await turnedOnTheOnlyWalk();
  // The longer part stands alone, and what it says of its own stations is true.
  const result = resultOf(conductor.session);
  expect(Object.keys(result.stations)).toEqual(['F5', 'F6', 'F7', 'F8', 'F9', 'F10', 'F11', 'F12']);
  expect(toSheet(conductor.session).notes).toContain(
    'Not tied to the rest yet and left out: F0, F1, F2, F3, F4.',
  );
  const truth = conductor.world.truthUm();
  const ends = (k: number) => truth.F5! + ((truth.F12! - truth.F5!) * (k - 5)) / 7;
  for (let k = 6; k < 12; k += 1) {
    const { heightUm, uUm } = result.stations[`F${k}`]!;
    expect(Math.abs(heightUm - (truth[`F${k}`]! - ends(k))), `F${k}`).toBeLessThan(4 * uUm);
  }
  expect(turnedAlone(conductor)).toMatchObject({
    text: '"front way, going out": the level was turned in mid-walk and no place was read both ways, so its zero can\'t be told from a kink there. Read F4 – F5 once more as the level faces now, or walk back.',
    place: { run: 'front way out', at: ['F4', 'F5'] },
    warns: true,
  });
  await conductor.ask({ do: 'run', run: 'front way back', on: true });
  await conductor.walk();
  expect(turnedAlone(conductor)).toBeUndefined();
  await conductor.end();
  expectTrue(conductor);
});

test('one place read both ways ties the two parts: the result has the larger uncertainty that belongs to it', async () => {
  const conductor = await turnedOnTheOnlyWalk();
  await conductor.ask({ do: 'aim', place: turnedAlone(conductor)!.place! });
  await conductor.place(conductor.session.next!);
  expect(turnedAlone(conductor)).toBeUndefined();
  // Both readings of the place count, and taking the new one back leaves the old one.
  const { bothWays, counted, takes } = conductor.session;
  expect([...bothWays.keys()]).toEqual(['front way out:F4-F5']);
  expect(takes.every(({ out }) => out === undefined)).toBe(true);
  const straight = await Conductor.of(aWay('no'));
  await straight.walk();
  const u = ({ session }: Conductor) => resultOf(session).lines['front way']!.stations.F5!.uUm;
  expect(u(conductor)).toBeGreaterThan(1.5 * u(straight));
  expectTrue(conductor);
  await conductor.ask({ do: 'void', take: counted.get('front way out:F4-F5')!.seq, reason: 'bumped' });
  expect(conductor.session.bothWays.size).toBe(0);
  expect(turnedAlone(conductor)).toBeDefined();
  await conductor.end();
  expect(fold(conductor.header, conductor.events)).toEqual(conductor.session);
});

test('a place read both ways in the only walk: the truth within the stated uncertainty in 95 % of 200 surveys', async () => {
  const { setup, scene } = aWay('no');
  const known = proved(setup, await reseatSigma({ setup, scene, seed: 4242 }, 1000));
  const coverage = new Coverage();
  for (let seed = 1; seed <= 200; seed += 1) {
    const conductor = await Conductor.of({ ...aWay('no', { seed, hand: asItFaces(5) }), setup: known });
    for (let k = 0; k < 5; k += 1) await conductor.place(conductor.session.next!);
    await conductor.ask({ do: 'turned' });
    await conductor.ask({ do: 'aim', place: { run: 'front way out', at: ['F4', 'F5'] } });
    await conductor.place(conductor.session.next!);
    await conductor.walk();
    await conductor.end();
    coverage.count(judged(conductor.session.plan, conductor.world.truthUm(), resultOf(conductor.session)));
  }
  coverage.expectSound(200);
});

test('said by mistake, it is taken back before the next reading', async () => {
  const conductor = await Conductor.of(aWay('no'));
  await conductor.place(conductor.session.next!);
  await conductor.ask({ do: 'turned' });
  await conductor.ask({ do: 'turned' });
  await conductor.walk();
  await conductor.end();
  expect(conductor.session.turnedTakes.size).toBe(0);
  expectTrue(conductor);
});

/** About 0.5 µm/m from one take to the next. */
const drifting = { zero: 38, noise: 0.2, driftPerHour: 700, settleMs: 420, swing: 120 };

test('a steady drift is taken off by choice, and the result says so', async () => {
  const conductor = await Conductor.of(aWay('same', { traits: drifting }));
  await conductor.walk();
  expect(told(conductor)).toContain('drift');
  const before = resultOf(conductor.session).fit;
  expect(toSheet(conductor.session).walks).toHaveLength(2);

  await conductor.ask({ do: 'take-drift-off', off: true });
  const sheet = toSheet(conductor.session);
  expect(sheet.walks).toMatchObject([{ id: 'front way out and back', drift: true }]);
  expect(sheet.notes).toBe('A steady drift of the zero is taken off, by choice: front way out and back.');
  expect(resultOf(conductor.session).fit.s0!).toBeLessThan(before.s0! / 3);
  expect(
    notices(conductor.session, resultOf(conductor.session)).find(({ code }) => code === 'drift')!.text,
  ).toMatch(/It is taken off, as you chose\.$/);
  expectTrue(conductor);

  await conductor.ask({ do: 'take-drift-off', off: false });
  expect(resultOf(conductor.session).fit).toEqual(before);
  await conductor.end();
});

test.each([
  ['walked one way only', 'no' as const],
  ['turned for the walk back, where drift and bow look alike', 'turned' as const],
])('it is not offered where readings cannot tell it: %s', async (_, back) => {
  const conductor = await Conductor.of(aWay(back, { traits: drifting }));
  await conductor.walk();
  await expect(conductor.ask({ do: 'take-drift-off', off: true })).rejects.toMatchObject({
    code: 'command.refused',
  });
  expect(conductor.session.driftOff).toBe(false);
  await conductor.end();
});

test('where the drift is taken off, a chip is still told at its place of the plan, not of a joined walk', async () => {
  const conductor = await Conductor.of(
    aWay('same', {
      traits: drifting,
      hand: (place, nth, world) => world.reading(place) + (nth === 17 ? 12 : 0),
    }),
  );
  await conductor.walk();
  await conductor.ask({ do: 'take-drift-off', off: true });
  const [first] = notices(conductor.session, resultOf(conductor.session)).filter(
    ({ code }) => code === 'suspect',
  );
  // Two readings of one place check each other: which of them is wrong, nobody can tell.
  expect(first!.place!.at).toEqual(conductor.session.placements[17]!.at);
  expect(conductor.session.runs.map(({ id }) => id)).toContain(first!.place!.run);
  await conductor.end();
});
