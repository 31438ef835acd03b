import { plus, type Scenario, shifted, stage, steps, walked, way } from './scenario.ts';

export const chip: Scenario = {
  id: 'chip',
  async make() {
    const conductor = await stage('chip', { hand: plus((nth) => (nth === 3 ? 40 : 0)), seed: 8 });
    await conductor.walk();
    const spoilt = conductor.session.takes[3]!.event;
    await conductor.ask({ do: 'note', text: 'a chip under the far foot; wiped', place: spoilt.place });
    await conductor.ask({ do: 'aim', place: spoilt.place });
    await conductor.place(spoilt.place);
    await conductor.end();
    return conductor;
  },
  tell(facts) {
    const all = facts.upTo(facts.at(16));
    const suspect = all.result.readings.find(({ suspect }) => suspect)!;
    return {
      title: 'A chip under one foot',
      about:
        'At one step of the way out a chip lay under the far foot. It is found, wiped away, and the step is read again.',
      lookFor: 'The step in the profile; when the tool begins to doubt; which of the two readings it doubts.',
      seen: `That F3–F4 was read twice and that the two disagree by ${Math.abs(suspect.residual / suspect.redundancy).toFixed(1)} µm/m: "${all.told[0]}"`,
      unseen:
        'Which of the two is wrong. Two readings of one step check only each other: both are to be read again.',
      moments: [
        {
          is: 'note',
          at: facts.at(4),
          text: `This take reads 40 µm/m too much: 6 µm over 150 mm, about as thick as a chip that nobody sees. Every station behind it is lifted by 6 µm.`,
          arrows: [{ to: 'F4', says: 'chip here' }],
        },
        {
          is: 'note',
          at: facts.at(8),
          text: `Way out done. The profile has a step, but worn ways have steps too. Nothing is marked: nothing checks these readings yet. As it stands: ${facts.upTo(facts.at(8)).straight()} µm.`,
          arrows: [{ to: 'F4', says: 'wear, or dirt?' }],
        },
        {
          is: 'stop',
          at: facts.at(16),
          text: 'Walked back. F3–F4 is marked: out and back disagree. What now?',
          arrows: [{ to: 'F4', says: 'marked' }],
          right: 'wipe',
          because:
            'Wipe the feet and the metal and read the step again. Ask why it is suspect to see how large the disagreement is, and how much of it the other reading could show.',
        },
        {
          is: 'note',
          at: facts.lastSeq,
          text: `Read again, it agrees. Result: ${facts.straight()} µm; true: ${facts.trueStraight()} µm. The spoilt take stays on record, struck out.`,
        },
      ],
    };
  },
};

export const levelTurned: Scenario = {
  id: 'level-turned',
  make: () =>
    walked('level-turned', {
      hand: (place, nth, world) => (nth >= 4 && nth < steps ? -1 : 1) * world.reading(place),
      seed: 9,
    }),
  tell: (facts) => ({
    title: 'The level is turned in mid-walk',
    about:
      'After the fourth step the level was lifted over the toolpost and came down end for end. Its zero is 30 µm/m off.',
    lookFor: 'The corner in the profile, and what the walk back says about it.',
    seen: `With the walk back, everything: "${facts.told[0]}"`,
    unseen:
      'On the way out alone, nothing for certain: from F4 on every slope has the wrong sign, and the shape is still smooth.',
    moments: [
      {
        is: 'stop',
        at: facts.at(5),
        text: 'The level was lifted over the toolpost. Which check was due before this take?',
        right: 'turn',
        because:
          'Look which end points to the tail, and turn it back if need be. From here on the slopes count with the wrong sign, but the zero of 30 µm/m does not turn with them.',
      },
      {
        is: 'note',
        at: facts.at(8),
        text: `Way out done: ${facts.upTo(facts.at(8)).straight()} µm by the numbers so far. It could be real.`,
        arrows: [{ to: 'F4', says: 'turned here' }],
      },
      {
        is: 'note',
        at: facts.lastSeq,
        text: `The walk back goes the contrary way from F4 on. The mean of both is worth nothing there: ${facts.straight()} µm found, ${facts.trueStraight()} µm true. Repeat the way out from F4.`,
        arrows: [{ to: 'F4', says: 'repeat from here' }],
      },
    ],
  }),
};

/** Wear with a place of its own, so that a shift along the way can be seen. */
const dip = (x: number) => -18 * Math.exp(-(((x - 780) / 190) ** 2));

export const stationSkipped: Scenario = {
  id: 'station-skipped',
  make: () => walked('station-skipped', { surface: dip, hand: shifted(4, 1), seed: 10 }),
  tell: (facts) => ({
    title: 'A station is skipped',
    about:
      'On the way out the level was carried one mark too far after F4; all behind was read one step ahead.',
    lookFor: 'Where the lowest station lies on the way out, and where on the way back.',
    seen: `Only by walking back: "${facts.told[0]}"`,
    unseen:
      'From the way out alone, nothing: the shape looks right, only its place is wrong. Count the marks aloud.',
    moments: [
      {
        is: 'note',
        at: facts.at(5),
        text: 'The tool says F4–F5, the feet stand on F5–F6. The number is a good reading of the wrong place.',
        arrows: [
          { to: 'F4', says: 'said' },
          { to: 'F6', says: 'stood' },
        ],
      },
      {
        is: 'note',
        at: facts.at(8),
        text: `Way out done: lowest at ${facts.upTo(facts.at(8)).line().straightness.ends.lowest}, ${facts.upTo(facts.at(8)).straight()} µm. Nothing looks wrong.`,
      },
      {
        is: 'stop',
        at: facts.lastSeq - 1,
        text: 'The walk back tells another story from F4 on. What now?',
        right: 'wipe',
        because:
          'Repeat the way out from F4, mark by mark. Neither walk is proved wrong by the other: the marks decide.',
      },
      {
        is: 'note',
        at: facts.lastSeq,
        text: `Mean of both as it stands: ${facts.straight()} µm; true: ${facts.trueStraight()} µm, lowest at F5.`,
        arrows: [{ to: 'F5', says: 'really lowest' }],
      },
    ],
  }),
};

export const stationDoubled: Scenario = {
  id: 'station-doubled',
  make: () =>
    walked('station-doubled', {
      setup: { ...way, back: 'no' },
      surface: dip,
      hand: shifted(4, -1),
      seed: 11,
    }),
  tell: (facts) => ({
    title: 'A station is doubled',
    about:
      'One walk only. After F4 the level was set down once more where it had stood; all behind was read one step late.',
    lookFor: 'Any sign of it. There is none.',
    seen: `Nothing: ${facts.codes.includes('slip') ? 'a slip' : 'no reading is checked by another one'}, and the shape is as smooth as the true one.`,
    unseen:
      'That a place was read twice. Hands-free taking asks for a felt movement first, but lifting and setting down on the same marks is a movement.',
    moments: [
      {
        is: 'stop',
        at: facts.at(5),
        text: 'The phone rang after F3–F4. The level stands on the way; the tool asks for F4–F5. What is to be done before the next take?',
        right: 'wait',
        because:
          'Look at the marks before you believe the tool: it can’t see them. Here the level stood on F3–F4 still.',
      },
      {
        is: 'note',
        at: facts.lastSeq,
        text: `Found: ${facts.straight()} µm, lowest at ${facts.line().straightness.ends.lowest}. True: ${facts.trueStraight()} µm, lowest at F5. A walk back would have shown it at once.`,
        arrows: [{ to: 'F5', says: 'really lowest' }],
      },
    ],
  }),
};
