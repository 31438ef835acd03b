import { describe, expect, test } from 'vitest';
import { ordinaryLevel } from '../../daemon/simulate/pendulum.ts';
import { demoScene } from '../../daemon/simulate/scenario.ts';
import type { Circumstances, Notice, NoticeCode } from '../../shared/notice/notice.ts';
import { notices } from '../../shared/notice/notices.ts';
import { demoSetups } from '../../shared/session/demo-setups.ts';
import { resultOf } from '../../shared/session/result.ts';
import { type SetupInput, setupSchema } from '../../shared/session/setup.ts';
import type { Plan } from '../../shared/survey/plan.ts';
import { Conductor, type Hand, hastyPace } from '../tools/conduct.ts';

/**
 * Faults planted in a whole survey: whether the tool notices, after which take, and what it says. Takes count from 1.
 * The level is proved: one take is known to be sure to 0.25 µm/m; an indicator's to 0.07 µm.
 */
interface Planted {
  readonly fault: string;
  readonly setup: SetupInput;
  readonly hand: Hand;
  /** What is told in the end, and the first take after which that code is told at all. */
  readonly notice: NoticeCode;
  readonly afterTake: number;
  readonly says: RegExp;
}

/** A fault that no arithmetic on these readings can see, and the check by a person that the plan holds for it. */
interface Unseen {
  readonly fault: string;
  readonly setup: SetupInput;
  readonly hand: Hand;
  readonly check: string;
  /** The fault is there: it spoils the result by more than this, µm. */
  readonly spoilsUm: number;
}

const level = { ...demoSetups.way.instrument, sigma: 0.25 };
const indicator = { ...demoSetups.slide.instrument, sigma: 0.00007 };
/** Twelve steps out, twelve back. */
const outAndBack: SetupInput = { ...demoSetups.way, back: 'same', instrument: level };
const outAndTurned: SetupInput = { ...demoSetups.way, back: 'turned', instrument: level };
const outOnly: SetupInput = { ...demoSetups.way, back: 'no', instrument: level };
const bed: SetupInput = { ...demoSetups.bed, instrument: level };
const plate: SetupInput = { ...demoSetups.plate, back: 'no', instrument: level };
const slide: SetupInput = { ...demoSetups.slide, faces: 'top', instrument: indicator };
const square: SetupInput = { ...demoSetups.square, instrument: indicator };

const steps = 12;
/** One second of arc, µm/m. */
const arcSecond = Math.PI / 0.648;
const plus =
  (extra: (nth: number) => number): Hand =>
  (place, nth, world) =>
    world.reading(place) + extra(nth);
/** From the nth step on the way out, the feet stand so many steps further than they should. */
const shifted =
  (from: number, by: number): Hand =>
  (place, nth, world) =>
    world.reading(nth >= from && nth < steps ? stepOf(world.plan, nth + by) : place);

function stepOf({ runs }: Plan, k: number) {
  const [out] = runs;
  if (out?.reads !== 'tilt') throw new Error('no walk');
  return { run: out.id, at: out.feet[Math.min(k, out.feet.length - 1)]! };
}

const table: readonly Planted[] = [
  {
    fault: 'a chip of 10 µm under one foot, one walk, on straight ground',
    setup: outOnly,
    hand: plus((nth) => (nth === 7 ? 67 : 0)),
    notice: 'lone-jump',
    afterTake: 10,
    says: /^F7 – F8 reads \d+\.\d µm\/m more than its neighbours on both sides, a step of \d+\.\d µm over 150 mm\. That is dirt or a burr until proved: wipe the feet and the metal, repeat it\.$/,
  },
  {
    fault: 'a chip of 3 µm under one foot, out and back',
    setup: outAndBack,
    hand: plus((nth) => (nth === 4 ? 20 : 0)),
    notice: 'suspect',
    afterTake: 20,
    says: /^F4 – F5 was read twice, (19|20)\.\d µm\/m apart; which one is wrong can't be told\. Wipe the feet and the metal, repeat both\.$/,
  },
  {
    fault: 'a chip under the bridge across a bed',
    setup: bed,
    hand: plus((nth) => (nth === 20 ? 30 : 0)),
    notice: 'suspect',
    afterTake: 29,
    says: /^Wipe the feet and the metal and repeat F4 – R4 \(Across both ways on the bridge\): it reads (29|30)\.\d µm\/m more than the others agree with\.$/,
  },
  {
    fault: 'a chip on the near edge of a plate',
    setup: plate,
    hand: plus((nth) => (nth === 25 ? 30 : 0)),
    notice: 'closure',
    afterTake: 36,
    says: /^At (C|NM|NR) the lines miss each other by \d\.\d+ µm, where 0\.\d+ µm would be usual\. "near edge" fits worst: repeat it\./,
  },
  {
    fault: 'a chip under the tip, out and back',
    setup: slide,
    hand: plus((nth) => (nth === 3 ? 6 : 0)),
    notice: 'suspect',
    afterTake: 11,
    says: /^T3 was read twice, (5|6)\.\d+ µm apart; which one is wrong can't be told\. Wipe the tip and the metal, repeat both\.$/,
  },
  {
    fault: 'the level turned in mid-walk on the way out',
    setup: outAndBack,
    hand: (place, nth, world) => (nth >= 6 && nth < steps ? -1 : 1) * world.reading(place),
    notice: 'slip',
    afterTake: 18,
    says: /^From F6 – F7 on, out and back go contrary ways: the level was turned end for end in mid-walk\. Turn it back and repeat "front way, going out" from there\.$/,
  },
  {
    fault: 'the level turned in mid-walk on the way back',
    setup: outAndBack,
    hand: (place, nth, world) => (nth >= 17 ? -1 : 1) * world.reading(place),
    notice: 'slip',
    afterTake: 19,
    says: /^From F6 – F7 on, out and back go contrary ways: .* repeat "front way, coming back" from there\.$/,
  },
  {
    fault: 'a steady drift of 0.6 µm/m a take',
    setup: outAndBack,
    hand: plus((nth) => 0.6 * nth),
    notice: 'drift',
    afterTake: 16,
    // 12 takes of 0.6 µm/m are 7.2 µm/m in truth, a bow of 7.2 · 1.8/8 = 1.62 µm; the noise of this seed makes it 7.1.
    says: /^front way: the zero drifted by 7\.1 µm\/m from one end to the other; on one walk alone that would look like 1\.59 µm of bow\. Out and back together cancel a steady drift\.$/,
  },
  {
    fault: 'a steady drift of an indicator',
    setup: slide,
    hand: plus((nth) => 0.3 * nth),
    notice: 'drift',
    afterTake: 11,
    says: /^top: the zero drifted by 2\.\d+ µm from one end to the other; on one sweep alone that would look like 2\.\d+ µm of taper\./,
  },
  {
    fault: 'a station read twice on the way out, all beyond one step behind',
    setup: outAndBack,
    hand: shifted(5, -1),
    notice: 'slip',
    afterTake: 18,
    says: /^From F5 – F6 on, "front way, going out" stands one step behind the other walk: a station was read twice\. Repeat it from there\.$/,
  },
  {
    fault: 'a station passed over on the way out, all beyond one step ahead',
    setup: outAndBack,
    hand: shifted(5, 1),
    notice: 'slip',
    afterTake: 18,
    says: /^From F5 – F6 on, "front way, going out" stands one step ahead of the other walk: a station was passed over\. Repeat it from there\.$/,
  },
  {
    fault: 'warm hands: the zero creeps by 15 µm/m and comes to rest',
    setup: outAndBack,
    hand: plus((nth) => 15 * (1 - Math.exp(-nth / 5))),
    notice: 'drift',
    afterTake: 19,
    says: /^front way: the zero drifted by .* at least \d\.\d+ µm of bow\. It was not steady, so out and back do not cancel it: warm hands, sun or a draught\./,
  },
  {
    fault: 'switched to arc seconds for the end of the way out, by an instrument that does not name its unit',
    setup: outAndBack,
    hand: (place, nth, world) => {
      const { zero } = ordinaryLevel;
      const reading = world.reading(place);
      return nth >= 8 && nth < steps ? (reading + zero) / arcSecond - zero : reading;
    },
    notice: 'slip',
    afterTake: 18,
    says: /^From F8 – F9 on, out and back differ by \d\d µm\/m more than before it: in one of the two walks the zero or the part has moved there, or the unit was switched\. Repeat that walk\.$/,
  },
  {
    fault: 'the part moved in mid-walk',
    setup: outAndBack,
    hand: plus((nth) => (nth >= 5 ? 8 : 0)),
    notice: 'slip',
    afterTake: 21,
    says: /^From F5 – F6 on, out and back differ by (7|8)\.\d µm\/m more than before it: in one of the two walks the zero or the part has moved there/,
  },
];

const unseen: readonly Unseen[] = [
  {
    fault: 'feet 160 mm apart where 150 mm was said, on marks 160 mm apart',
    setup: outAndBack,
    hand: (place, nth, world) => {
      const k = nth < steps ? nth : 2 * steps - 1 - nth;
      const [a, b] = [world.scene.surface(160 * k, 0), world.scene.surface(160 * (k + 1), 0)];
      return nth < 2 * steps ? (1000 * (b - a)) / 160 : world.reading(place);
    },
    check: 'measured-length: the measured length is asked for and held against steps × foot spacing',
    spoilsUm: 0.5,
  },
  {
    fault: 'a station passed over on the only walk',
    setup: outOnly,
    hand: shifted(5, 1),
    check:
      'the marks are counted against the measured length; the next station is named, large, before each take',
    spoilsUm: 1,
  },
  {
    fault: 'the level turned in mid-walk on the only walk',
    setup: outOnly,
    hand: (place, nth, world) => (nth >= 6 ? -1 : 1) * world.reading(place),
    check: 'the plan draws the end that the plus end of the level points to; the walk back shows it',
    spoilsUm: 3,
  },
  {
    fault: 'a steady drift, the level turned for the walk back',
    setup: outAndTurned,
    hand: plus((nth) => 0.6 * nth),
    check: 'drift-or-bow: the first place is to be read once more; see the test of the sentinel',
    spoilsUm: 1,
  },
  {
    fault: 'a creep that is alike before and after the far end',
    setup: outAndBack,
    hand: plus((nth) => 0.05 * (nth - 11.5) ** 2),
    check: 'the first place read again, and the time given to come to rest before the first take',
    spoilsUm: 0.5,
  },
  {
    fault: 'a drift while a square is swept',
    setup: square,
    hand: plus((nth) => 0.5 * nth),
    check: 'the first station of the sweep is to be read again at its end; see the test of the sentinel',
    spoilsUm: 0.1,
  },
];

/** Everything told after each take of a whole survey: what warns, or answers the code looked for. */
async function toldBy(input: SetupInput, hand: Hand, circumstances: Circumstances = {}) {
  const setup = setupSchema.parse(input);
  const conductor = await Conductor.of({ setup, scene: demoScene(setup), seed: 3, pace: hastyPace, hand });
  const after: Notice[][] = [];
  while (conductor.session.next) {
    await conductor.place(conductor.session.next);
    const { takes } = conductor.session;
    const result =
      takes.length < 2 && takes[0]!.event.place.at.length < 2 ? null : resultOf(conductor.session);
    after.push(notices(conductor.session, result, circumstances));
  }
  await conductor.end();
  return { after, conductor };
}

describe('planted faults', () => {
  test.each(table.map((row) => [row.fault, row] as const))('%s is noticed', async (_, row) => {
    const { after } = await toldBy(row.setup, row.hand);
    const first = after.findIndex((told) => told.some(({ code }) => code === row.notice)) + 1;
    const last = after.at(-1)!.find(({ code }) => code === row.notice);
    expect(last?.text).toMatch(row.says);
    expect(first).toBe(row.afterTake);
  });

  test('an instrument switched to another unit stops the taking, and it is said', async () => {
    const setup = setupSchema.parse(outAndBack);
    const conductor = await Conductor.of({ setup, scene: demoScene(setup), seed: 3, pace: hastyPace });
    for (const place of conductor.session.placements.slice(0, 4)) await conductor.place(place);
    conductor.spoken = 'mm/m';
    await expect(conductor.place(conductor.session.next!)).rejects.toThrow('no take came');
    const told = notices(conductor.session, resultOf(conductor.session));
    expect(told[0]).toMatchObject({ code: 'unit-changed', place: conductor.session.next });
    expect(told[0]!.text).toMatch(/^The instrument was switched to mm\/m\. Switch it back/);
    // Once it is seen, what it says is converted, and the result is as if nothing had been.
    await conductor.ask({ do: 'acknowledge-unit' });
    await conductor.walk();
    await conductor.end();
    const { heightUm, uUm } = resultOf(conductor.session).lines['front way']!.stations.F6!;
    const truth = conductor.world.truthUm();
    expect(Math.abs(heightUm - (truth.F6! - (truth.F0! + truth.F12!) / 2))).toBeLessThan(4 * uUm + 0.1);
  });
});

describe('faults that the readings cannot show', () => {
  test.each(unseen.map((row) => [row.fault, row] as const))('%s: left to a person', async (_, row) => {
    const setup = setupSchema.parse(row.setup);
    const { after, conductor } = await toldBy(row.setup, row.hand);
    expect(after.flat().filter(({ warns }) => warns)).toEqual([]);
    const [line] = Object.keys(conductor.session.plan.lines);
    const faulty = resultOf(conductor.session).lines[line!]!.stations;
    const { conductor: clean } = await toldBy(row.setup, (place, _, world) => world.reading(place));
    const sound = resultOf(clean.session);
    const offs = Object.entries(sound.lines[line!]!.stations).map(([name, { heightUm }]) =>
      Math.abs(heightUm - faulty[name]!.heightUm),
    );
    const slopes = Object.entries(sound.figures).map(([name, { value }]) =>
      Math.abs(value - resultOf(conductor.session).figures[name]!.value),
    );
    expect(Math.max(...offs, ...slopes), setup.kind).toBeGreaterThan(row.spoilsUm);
    expect(row.check).not.toBe('');
  });

  test('a foot spacing that was mistaken shows in the measured length', async () => {
    const { after } = await toldBy({ ...outAndBack, lengthMm: 1920 }, (place, _, world) =>
      world.reading(place),
    );
    const told = after[0]!.find(({ code }) => code === 'measured-length');
    expect(told?.text).toBe(
      '12 steps of 150 mm are 1800 mm, and 1920 mm were measured. Count the stations and measure the foot spacing: a wrong spacing makes every height wrong by as much.',
    );
  });

  test.each([
    [
      outAndTurned,
      0.6,
      /^F0 – F1, read again, shows 1\d\.\d+ µm\/m more than at first: .*false bow of [23]\.\d µm/,
    ],
    [
      square,
      0.5,
      /^U0, read again, shows 4\.\d+ µm more than at first: the zero or the part has moved meanwhile\./,
    ],
  ])(
    'a drift that hides behind the shape shows where the first place is read again',
    async (input, rate, says) => {
      const setup = setupSchema.parse(input);
      const hand = plus((nth) => rate * nth);
      const conductor = await Conductor.of({
        setup,
        scene: demoScene(setup),
        seed: 3,
        pace: hastyPace,
        hand,
      });
      await conductor.walk();
      const [first] = conductor.session.placements;
      await conductor.ask({ do: 'aim', place: first! });
      await conductor.place(first!);
      await conductor.end();
      const told = notices(conductor.session, resultOf(conductor.session));
      expect(told.find(({ code }) => code === 'sentinel')?.text).toMatch(says);
    },
  );
});

test.each(Object.values(demoSetups).map((input) => [input.kind, input] as const))(
  '%s: a sound survey of worn metal cries out about nothing',
  async (_, input) => {
    const sigma = 'mm' === input.instrument.unit ? 0.0001 : 0.25;
    for (const instrument of [input.instrument, { ...input.instrument, sigma }]) {
      const sound: Hand = (place, _, world) => world.reading(place);
      const { after } = await toldBy({ ...input, instrument }, sound);
      expect(after.flat().filter(({ warns }) => warns)).toEqual([]);
    }
  },
);
