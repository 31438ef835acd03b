import { hollow, plus, type Scenario, stage, walked, way } from './scenario.ts';

/** A way that is straight to a tenth of a µm: what is seen on it is not metal. */
const straight = (x: number) => 0.02 * x;

export const drift: Scenario = {
  id: 'drift',
  make: () => walked('drift', { surface: straight, hand: plus((nth) => 5 * nth), seed: 12 }),
  tell: (facts) => {
    const out = facts.upTo(facts.at(8));
    return {
      title: 'Drift and the false bow',
      about:
        'A way that is straight is walked with a level that has come from a cold car: its zero drifts by 5 µm/m a take.',
      lookFor: 'The bow after the way out, and what becomes of it on the way back.',
      seen: `With the walk back: "${facts.told.find((text) => text.includes('drifted'))}"`,
      unseen:
        'On one walk alone a steady drift and a bow are the same numbers. No mathematics can tell them apart.',
      moments: [
        {
          is: 'note',
          at: facts.at(8),
          text: `Way out done: ${out.line().shape}, ${out.straight()} µm. Each step reads 5 µm/m more than the one before, just as on a way that curves evenly.`,
          arrows: [{ to: 'F4', says: 'metal, or drift?' }],
        },
        {
          is: 'stop',
          at: facts.at(8),
          text: 'A bow of this size is out of limits. What comes before the scraper?',
          right: 'take',
          because:
            'Walk back, with the level facing as before. A bow of the metal reads the same both ways; a drift goes on.',
        },
        {
          is: 'note',
          at: facts.lastSeq,
          text: `Out and back: ${facts.straight()} µm; true: ${facts.trueStraight()} µm. The drift has cancelled, because it was steady. Let the level lie on the iron for an hour, and there is none.`,
        },
      ],
    };
  },
};

export const handHeat: Scenario = {
  id: 'hand-heat',
  make: () =>
    walked('hand-heat', {
      surface: straight,
      hand: plus((nth) => 35 * (1 - Math.exp(-nth / 4))),
      seed: 13,
    }),
  tell: (facts) => ({
    title: 'The heat of the hand',
    about:
      'A straight way. The level is carried in a bare warm hand: its zero creeps fast at first, then comes to rest.',
    lookFor: 'The difference between the two walks, step by step, in the working.',
    seen: `That the zero moved, and not steadily: "${facts.told.find((text) => text.includes('drifted')) ?? facts.told[0]}"`,
    unseen:
      'How much of the shape is left over from the creep. Only a steady drift cancels between out and back.',
    moments: [
      {
        is: 'note',
        at: facts.at(8),
        text: `Way out done: ${facts.upTo(facts.at(8)).straight()} µm out of straight, most of it in the first steps.`,
        arrows: [{ to: 'F2', says: 'steepest' }],
      },
      {
        is: 'stop',
        at: facts.at(16),
        text: 'Out and back differ much at the head and little at the tail. What now?',
        right: 'wait',
        because:
          'Lay the level down and let it come to the warmth of the iron; carry it by its handle or with gloves. Then walk anew.',
      },
      {
        is: 'note',
        at: facts.lastSeq,
        text: `Found: ${facts.straight()} µm. True: ${facts.trueStraight()} µm. The rest is heat that did not cancel.`,
      },
    ],
  }),
};

export const tooSoon: Scenario = {
  id: 'too-soon',
  async make() {
    const conductor = await stage('too-soon', { surface: hollow, seed: 14 });
    await conductor.ask({ do: 'hands-free', on: false });
    while (conductor.session.next?.run === 'front way out')
      await conductor.hurry(conductor.session.next, 360);
    await conductor.ask({ do: 'hands-free', on: true });
    await conductor.walk();
    await conductor.end();
    return conductor;
  },
  tell: (facts) => ({
    title: 'Reading before it has settled',
    about:
      'On the way out the hand insisted on every reading a third of a second after setting down. On the way back it waited.',
    lookFor:
      'The trace of the reading at each take, the spread of each take, and the disagreement between the walks.',
    seen: `That takes were made unsteady, each is marked so, and that the walks disagree: "${facts.told[0]}"`,
    unseen:
      'What the reading would have come to. A take that was too soon can’t be mended afterwards, only repeated.',
    moments: [
      {
        is: 'stop',
        at: facts.at(1) - 1,
        text: 'The level was set down a third of a second ago. The tool refuses; the hand is in a hurry. What would you do?',
        arrows: [{ to: 'F1', says: 'still swinging' }],
        right: 'wait',
        because: `The level swings for about two seconds. This take was insisted on: its readings scatter by ${facts.take(1).spread!.toFixed(0)} µm/m. A settled one scatters by ${facts.take(9).spread!.toFixed(1)} µm/m.`,
      },
      {
        is: 'note',
        at: facts.at(8),
        text: `Way out done in half the time. It says: ${facts.upTo(facts.at(8)).straight()} µm out of straight.`,
      },
      {
        is: 'note',
        at: facts.lastSeq,
        text: `The walk back waited. Together: ${facts.straight()} µm, true: ${facts.trueStraight()} µm. Half of the readings are spoilt, and the mean with them.`,
      },
    ],
  }),
};

/** Mean slope of a way that was walked back with the level turned, µm/m: the zero of the level drops out. */
function meanSlope(values: readonly number[]): string {
  const mean = (part: readonly number[]) => part.reduce((sum, value) => sum + value, 0) / part.length;
  const half = values.length / 2;
  const slope = (mean(values.slice(0, half)) - mean(values.slice(half))) / 2;
  return String(Math.round(slope) || 0);
}

const turnedBack = { ...way, back: 'turned' } as const;

export const levelNotStraight: Scenario = {
  id: 'level-not-straight',
  make: () => walked('level-not-straight', { setup: turnedBack, seed: 15 }),
  tell: (facts) => ({
    title: 'Level, but not straight',
    about:
      'A way whose two ends stand at one height: a long level laid over all of it shows no slope. It is walked out, and back with the level turned.',
    lookFor: 'The mean of all slopes, and the profile.',
    seen: `The mean slope is ${meanSlope(facts.session.takes.map(({ event }) => event.value))} µm/m, and yet the way is ${facts.straight()} µm out of straight.`,
    unseen: 'Nothing that matters for straightness. Turning the level for the walk back even finds its zero.',
    moments: [
      {
        is: 'note',
        at: facts.at(8),
        text: 'The slopes go down to the middle and up again: minus, minus, plus, plus. Their sum is nearly nought.',
        arrows: [{ to: 'F4', says: 'lowest' }],
      },
      {
        is: 'note',
        at: facts.lastSeq,
        text: `Levelling screws can do nothing about this: they tilt the line that is taken off. ${facts.straight()} µm found, ${facts.trueStraight()} µm true.`,
      },
    ],
  }),
};

export const straightNotLevel: Scenario = {
  id: 'straight-not-level',
  make: () =>
    walked('straight-not-level', { setup: turnedBack, surface: (x) => 0.4 * x + 0.02 * hollow(x), seed: 16 }),
  tell: (facts) => ({
    title: 'Straight, but not level',
    about: 'The bubble stands far out everywhere: the bed is not levelled. Is the way bad?',
    lookFor: 'Whether the readings are large, or whether they differ.',
    seen: `The mean slope is ${meanSlope(facts.session.takes.map(({ event }) => event.value))} µm/m: far from level. The way is ${facts.straight()} µm out of straight, sure to ${(2 * facts.line().straightness.ends.uUm).toFixed(1)} µm.`,
    unseen:
      'Nothing that matters here. A large reading is no fault of the metal; a reading that differs from its neighbours may be one.',
    moments: [
      {
        is: 'stop',
        at: facts.at(1),
        text: `The level reads ${facts.take(1).value.toFixed(0)} µm/m. What now?`,
        right: 'take',
        because:
          'Go on taking. The line through the ends is taken off, and with it the slope of the whole bed and the zero of the level.',
      },
      {
        is: 'note',
        at: facts.lastSeq,
        text: `Nothing is to be scraped: ${facts.straight()} µm found, ${facts.trueStraight()} µm true. Level the bed for the work that is done on it, not for the scraping.`,
      },
    ],
  }),
};
