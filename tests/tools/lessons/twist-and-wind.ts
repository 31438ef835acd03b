import { blueAndNumbers } from '../../../shared/job/blue.ts';
import type { Facts } from './facts.ts';
import { bed, type Scenario, stage, walked, way } from './scenario.ts';

const figure = (facts: Facts, name: string, digits = 1) =>
  Math.abs(facts.result.figures[name]!.value).toFixed(digits);

/** Cross slope less that of the head end, µm/m, times the height that it makes over the gauge. */
const twistedBy = (slope: (x: number) => number) => (x: number, y: number) => (slope(x) * y) / 1000;

export const twistByFeet: Scenario = {
  id: 'twist-by-feet',
  make: () => walked('twist-by-feet', { setup: bed, surface: twistedBy((x) => x / 15), seed: 17 }),
  tell: (facts) => ({
    title: 'Twist by the feet',
    about: 'A good bed stands on four screws, one of them too high. It is read along both ways and across.',
    lookFor: 'How the rungs of the ladder turn: evenly, or all at one place.',
    seen: `Twist ${figure(facts, 'twist')} µm/m, at an even rate of ${figure(facts, 'twistRate')} µm/m per metre; each way for itself is straight to ${facts.straight('ends', 'rear')} µm.`,
    unseen:
      'The cause. An even twist speaks for the feet, but only turning a screw and reading again proves it.',
    moments: [
      {
        is: 'stop',
        at: facts.lastSeq - 1,
        text: 'Both ways are straight, and the bed is twisted evenly from end to end. What comes before the scraper?',
        right: 'wait',
        because:
          'Put the scraper away. Slacken the screws, let the bed find its rest, level it, read across again. What the feet put in, the feet can take out.',
      },
      {
        is: 'note',
        at: facts.lastSeq,
        text: `The corner R6 stands ${figure(facts, 'wind')} µm out of the plane of the other three. The true figure is ${((1200 / 15) * 0.3).toFixed(1)} µm.`,
        arrows: [{ to: 'R6', says: 'out of plane' }],
      },
    ],
  }),
};

export const twistByWear: Scenario = {
  id: 'twist-by-wear',
  make: () =>
    walked('twist-by-wear', {
      setup: bed,
      surface: twistedBy((x) => -70 * Math.exp(-(((x - 400) / 220) ** 2))),
      seed: 18,
    }),
  tell: (facts) => ({
    title: 'Twist by wear',
    about: 'The same bed on good feet, but its rear way is worn near the headstock.',
    lookFor: 'How the rungs turn, and whether the rear way is still straight.',
    seen: `Twist ${figure(facts, 'twist')} µm/m, yet the corners lie in one plane to ${figure(facts, 'wind')} µm: the twist comes and goes. The rear way is ${facts.straight('ends', 'rear')} µm out of straight, the front way ${facts.straight('ends', 'front')} µm.`,
    unseen:
      'Nothing much: twist at one place, with a way that is not straight there, is metal that is gone. No foot can bring it back.',
    moments: [
      {
        is: 'stop',
        at: facts.lastSeq - 1,
        text: 'The rungs turn down near R2 and back again. Would a levelling screw help?',
        arrows: [{ to: 'R2', says: 'low' }],
        right: 'take',
        because:
          'No: take the survey as it is. A screw turns the bed from end to end; this is at one place. It is wear, and the rest is to be brought down to it.',
      },
      {
        is: 'note',
        at: facts.lastSeq,
        text: `Compare with the lesson before: there, an even rate and straight ways; here, a place. True straightness of the rear way: ${facts.trueStraight('rear')} µm.`,
        arrows: [{ to: 'R2', says: 'worn' }],
      },
    ],
  }),
};

export const windUnseen: Scenario = {
  id: 'wind-unseen',
  make: () =>
    walked('wind-unseen', {
      setup: bed,
      surface: (x, y) => (y > 0 ? 0.02 * x : 0.001 * x),
      seed: 19,
    }),
  tell: (facts) => ({
    title: 'Wind that a straightedge can’t see',
    about:
      'Front and rear way were each scraped to a straightedge. Both print all over. Then the level is laid across.',
    lookFor: 'What the walks along the ways say, and what the readings across say.',
    seen: `Each way is straight to ${facts.straight('ends', 'front')} and ${facts.straight('ends', 'rear')} µm, and the corner R6 stands ${figure(facts, 'wind')} µm out of the plane of the other three. Only the readings across see it.`,
    unseen:
      'With a straightedge along the ways, all of it: a straight line has no wind. Which way is to come down is a choice, not a measurement.',
    moments: [
      {
        is: 'note',
        at: facts.at(6),
        text: 'The front way is done: straight. By a straightedge it prints from end to end.',
        arrows: [{ to: 'F6', says: 'straight' }],
      },
      {
        is: 'note',
        at: facts.at(13),
        text: 'Now across, on the bridge: the rear way climbs over the front one, a little more at each step.',
        arrows: [{ to: 'R6', says: 'climbs' }],
      },
      {
        is: 'note',
        at: facts.lastSeq,
        text: `Wind ${figure(facts, 'wind')} µm; true: ${(0.019 * 1200).toFixed(1)} µm. A carriage on this bed rocks from corner to corner.`,
        arrows: [{ to: 'R6', says: 'HIGH' }],
      },
    ],
  }),
};

export const blueDisagrees: Scenario = {
  id: 'blue-disagrees',
  async make() {
    const conductor = await stage('blue-disagrees', {
      hand: (place, _, world) => -world.reading(place),
      seed: 20,
    });
    await conductor.walk();
    const shows = (name: string) => ['F0', 'F8'].includes(name);
    const stations = conductor.session.plan.stations.map(({ name }) => [name, { shows: shows(name) }]);
    await conductor.ask({
      do: 'print',
      against: 'straightedge 1250 mm',
      stations: Object.fromEntries(stations),
    });
    await conductor.ask({ do: 'note', text: 'blue only at the two ends' });
    await conductor.end();
    return conductor;
  },
  tell(facts) {
    const { contact } = facts.result.metal['front way']!;
    const names = facts.session.plan.stations.map(({ name }) => name);
    const compared = blueAndNumbers(contact, names, facts.session.prints[0]!);
    return {
      title: 'The blue and the numbers disagree',
      about: 'The way was surveyed, then printed with an inked straightedge. The two do not say the same.',
      lookFor: 'Where the numbers let you expect the print, and where it is.',
      seen: `That they disagree at ${compared.stations.filter(({ expected, shows }) => expected !== shows).length} of ${compared.stations.length} stations. The numbers would rest the straightedge on ${contact.restsOn.join(' and ')}.`,
      unseen:
        'Which of the two is right. Here it is the blue: the sign of the level was inverted. A print can’t have its sign wrong.',
      moments: [
        {
          is: 'note',
          at: facts.at(16),
          text: `The survey says: ${facts.line().shape}, ${facts.straight()} µm. A straightedge laid on that would rest in the middle and rock.`,
          arrows: [{ to: 'F4', says: 'print expected' }],
        },
        {
          is: 'stop',
          at: facts.lastSeq - 1,
          text: 'The straightedge prints at F0 and F8 only. What now?',
          arrows: [
            { to: 'F0', says: 'blue' },
            { to: 'F8', says: 'blue' },
          ],
          right: 'wait',
          because:
            'Don’t scrape yet. Prove the sign of the level: a strip of paper under the far foot must read plus. Neither blue nor numbers overrule the other until the cause is known.',
        },
        {
          is: 'note',
          at: facts.lastSeq,
          text: `True shape: hollow by ${facts.trueStraight()} µm. The blue was right.`,
          arrows: [{ to: 'F4', says: 'really LOW' }],
        },
      ],
    };
  },
};

export const threeReferences: Scenario = {
  id: 'three-references',
  make: () =>
    walked('three-references', { surface: (x) => -16 * Math.max(0, (x - 600) / 600) ** 2, seed: 21 }),
  tell: (facts) => ({
    title: 'One way, three references',
    about:
      'A way that is straight for its first half and worn down towards its end. How far is it out of straight? That depends.',
    lookFor:
      'At the end, change between ends, least squares and minimum zone: the metal stays, the line moves.',
    seen: `The same heights give ${facts.straight('ends')} µm by the ends, ${facts.straight('leastSquares')} µm by least squares, ${facts.straight('minimumZone')} µm by the minimum zone. All three are right.`,
    unseen: 'Which one was agreed. A figure without its reference says nothing; write it beside the number.',
    moments: [
      {
        is: 'note',
        at: facts.at(8),
        text: 'By the ends, the middle seems to stand proud: the line is tied to a last station that is worn away.',
        arrows: [{ to: 'F8', says: 'worn' }],
      },
      {
        is: 'note',
        at: facts.lastSeq,
        text: `Ends: ${facts.straight('ends')} µm. Least squares: ${facts.straight('leastSquares')} µm. Minimum zone: ${facts.straight('minimumZone')} µm, the smallest by definition. True, by the ends: ${facts.trueStraight()} µm. Press 1, 2 and 3.`,
        arrows: [{ to: way.stations > 5 ? 'F5' : 'F1', says: 'proud of the line' }],
      },
    ],
  }),
};
