import type { Facts } from './facts.ts';
import { hollow, type Scenario, stage, walked, way } from './scenario.ts';

const um = (value: number, digits = 1) => Math.abs(value).toFixed(digits);

/** What the reading of a take says, in µm/m, and the rise of its step in µm. */
function rise(facts: Facts, nth: number): [reading: string, riseUm: string] {
  const { value } = facts.take(nth);
  return [um(value), um((value * 150) / 1000, 2)];
}

export const cleanWalk: Scenario = {
  id: 'clean-walk',
  async make() {
    const conductor = await stage('clean-walk', {});
    const [first, second] = conductor.session.placements;
    await conductor.place(first!);
    await conductor.place(second!);
    await conductor.ask({
      do: 'void',
      take: conductor.session.takes.at(-1)!.event.seq,
      reason: 'leaned on the bed',
    });
    await conductor.walk();
    await conductor.end();
    return conductor;
  },
  tell(facts) {
    const [reading, riseUm] = rise(facts, 1);
    // Nine takes on the way out: one was taken back.
    const out = facts.upTo(facts.at(9));
    const { heightUm, uUm } = facts.line().stations.F4!;
    return {
      title: 'A clean walk, explained',
      about: 'A worn front way is walked out and back with a level, foot to foot, as it should be done.',
      lookFor:
        'When the hand waits and when it takes; which reading it took back, and why; what the walk back is for.',
      seen: `Everything that matters here: the way is hollow, ${facts.straight()} µm out of straight, and every reading is checked by another one.`,
      unseen:
        'Whether the feet stood on the right marks, and whether they are as far apart as was said. Count the marks, measure the feet.',
      moments: [
        {
          is: 'note',
          at: 0,
          text: 'The level stands with its two feet on two marks, 150 mm apart. It does not tell heights: it tells how much one foot stands over the other. Press Go on.',
          arrows: [
            { to: 'F0', says: 'one foot here' },
            { to: 'F1', says: 'the other here' },
          ],
        },
        {
          is: 'stop',
          at: facts.unsettled(1),
          text: 'The level was just set down. Look at the trace of its reading. What would you do?',
          right: 'wait',
          because:
            'It still swings. A take averages the last second: taken now, the swing would be in the height of every station behind.',
        },
        {
          is: 'note',
          at: facts.at(1),
          text: `First take. The level read ${reading} µm/m; times 150 mm that is a step of ${riseUm} µm from F0 to F1. Show the working to see it written out as on paper. The level's own zero is in it: 30 µm/m that will drop out.`,
          arrows: [{ to: 'F1', says: 'one step known' }],
        },
        {
          is: 'stop',
          at: facts.at(2),
          text: 'Just after this take the hand noticed that it had leaned on the bed. The number looks quite possible. What now?',
          arrows: [{ to: 'F2', says: 'leaned on here' }],
          right: 'wipe',
          because:
            'Take it back, set down anew, read again. A reading is rejected because of what was seen to happen, never because its number is not liked. The spoilt take stays on record.',
        },
        {
          is: 'note',
          at: facts.at(6),
          text: 'Rises are summed from mark to mark, and the line through both ends is taken off. The picture is what all readings so far say; the band round it is how sure that is. It is widest in the middle, because errors of the steps add up from both ends.',
          arrows: [{ to: 'F5', says: 'so far' }],
        },
        {
          is: 'note',
          at: facts.at(9),
          text: `The way out is done: hollow, ${out.straight()} µm. But nothing has checked it yet. One bump that nobody noticed, or a level whose zero drifts, would look like metal.`,
          arrows: [{ to: 'F4', says: 'lowest' }],
        },
        {
          is: 'stop',
          at: facts.at(9),
          text: 'All eight steps are read once. What now?',
          right: 'take',
          because:
            'Go on taking: walk back over the same steps. Each is then read twice, a slip shows up at once, and a steady drift of the zero cancels. Press 5× if the way back is too long for you.',
        },
        {
          is: 'note',
          at: facts.lastSeq,
          text: `Out and back together: ${facts.straight()} µm hollow; F4 stands ${um(heightUm)} µm LOW, sure to ${um(2 * uUm)} µm. This metal is invented, so its true shape is known: hollow by ${facts.trueStraight()} µm. Lay the true shape over it and compare.`,
          arrows: [{ to: 'F4', says: 'lowest' }],
        },
      ],
    };
  },
};

export const signInverted: Scenario = {
  id: 'sign-inverted',
  make: () =>
    walked('sign-inverted', { hand: (place, _, world) => -world.reading(place), zero: 12, seed: 6 }),
  tell: (facts) => ({
    title: 'The sign is inverted',
    about:
      'The same worn way, walked out and back. The level was put on the wrong way round, or its cable counts the other way.',
    lookFor:
      'Whether anything at all disagrees. Then think of what the way is used for, and whether this shape can be wear.',
    seen: `Nothing. Out and back agree, no reading is suspect, and the figure is right: ${facts.straight()} µm. Only that it is drawn as a crown.`,
    unseen:
      'The sign. Before the first take, put a strip of paper under the foot at the far end: the reading must go towards plus.',
    moments: [
      {
        is: 'note',
        at: facts.at(8),
        text: `After the way out: a crown of ${facts.upTo(facts.at(8)).straight()} µm. A bed that carries its carriage in the middle does not wear to a crown. That is not a proof, but a reason to stop.`,
        arrows: [{ to: 'F4', says: 'highest?' }],
      },
      {
        is: 'stop',
        at: facts.at(8),
        text: 'A crown, on a way that should be worn hollow. What now?',
        right: 'wait',
        because:
          'Stop, and put a strip of paper under the foot at the far end: the reading must go towards plus. Wiping, repeating and taking more can’t show it, because every reading is wrong alike.',
      },
      {
        is: 'note',
        at: facts.lastSeq,
        text: `True shape: hollow by ${facts.trueStraight()} µm, the perfect mirror of what was found. Scraping by this picture would take metal off both ends of a way that is already low in the middle.`,
        arrows: [{ to: 'F4', says: 'really lowest' }],
      },
    ],
  }),
};

const asEntered = { ...way, baseMm: 200 } as const;

export const footSpacing: Scenario = {
  id: 'foot-spacing',
  make: () =>
    walked('foot-spacing', {
      setup: asEntered,
      surface: (x) => hollow(0.75 * x),
      // The real feet stand 150 mm apart, on marks of 150 mm.
      hand: (place, _, world) => (world.reading(place) * 200) / 150,
      seed: 7,
    }),
  tell: (facts) => ({
    title: 'The foot spacing is wrong',
    about: 'The feet stand 150 mm apart; 200 mm was entered. Everything else is done well.',
    lookFor: 'The dimension under the part, and the notices.',
    seen: `Only what the tape says: ${facts.told.find((text) => text.includes('were measured')) ?? ''}`,
    unseen:
      'From readings alone, nothing: the shape is right, every height is wrong by the same factor. Measure between the feet, not the length of the level.',
    moments: [
      {
        is: 'note',
        at: facts.at(3),
        text: 'Rise = reading × foot spacing. With 200 in place of 150 every rise is a third too large, and so is every height.',
        arrows: [{ to: 'F2', says: 'said: 400 mm from F0' }],
      },
      {
        is: 'stop',
        at: facts.at(8),
        text: 'Eight steps of 200 mm have been walked on a way that was measured to be 1200 mm long. What now?',
        right: 'wait',
        because:
          'Stop and measure. Eight steps of 200 mm would be 1600 mm. Either the count or the spacing is wrong.',
      },
      {
        is: 'note',
        at: facts.lastSeq,
        text: `Found: ${facts.straight()} µm hollow. True: ${facts.trueStraight()} µm. A third of the metal would be scraped off for nothing.`,
        arrows: [{ to: 'F4' }],
      },
    ],
  }),
};
