import { placementsOf } from '../../../shared/survey/plan.ts';
import { plateClosures } from '../../../web/drawing/plate/plate-closures.ts';
import type { PlateSession } from '../../../web/drawing/plate/plate-session.ts';
import { type Scenario, walked, way } from './scenario.ts';

/** The plate of the lesson about closures: a dome with one corner worn down. */
const plateShape = (x: number, y: number) =>
  6 * Math.exp(-(((x - 400) / 350) ** 2) - ((y - 300) / 300) ** 2) -
  5 * Math.exp(-(((x - 800) / 200) ** 2) - (y / 180) ** 2);

export const plateByLines: Scenario = {
  id: 'plate-closures',
  make: () =>
    walked('plate-closures', {
      setup: {
        kind: 'plate',
        part: 'Cast-iron plate 4',
        surface: 'top',
        lengthMm: 850,
        widthMm: 650,
        borderMm: 25,
        baseMm: 100,
        back: 'no',
        operator: 'the teacher',
        support: 'its own 3 points',
        instrument: way.instrument,
      },
      surface: plateShape,
      seed: 22,
    }),
  tell(facts) {
    const { result } = facts;
    const closures = plateClosures(facts.session as PlateSession, result);
    const worst = closures.reduce((most, each) => (each.closureUm > most.closureUm ? each : most));
    const closing = `Lines meet at ${closures.length} places, and miss each other there by ${worst.closureUm.toFixed(2)} µm at most; the scatter of the level alone makes up to ${(2 * worst.uUm).toFixed(2)} µm.`;
    const flat = result.figures['flatness.minimumZone']!.value.toFixed(1);
    const runs = facts.session.runs.map((run) => placementsOf(run).length);
    const afterDiagonals = runs[0]! + runs[1]!;
    return {
      title: 'A plate by eight lines, with closures',
      about:
        'A surface plate is walked along two diagonals, four edges and two centre lines. Lines meet, and there they must agree.',
      lookFor: 'Where lines meet for the second time, and by how much they miss each other.',
      seen: `${closing} So no line was walked wrong. The plate is flat within ${flat} µm.`,
      unseen: 'What lies between the lines. Eight lines see an edge and a cross, not every hollow.',
      moments: [
        {
          is: 'note',
          at: facts.at(afterDiagonals),
          text: 'Both diagonals are read. They cross in the middle, and the middle is taken as one height: that ties the four corners together.',
          arrows: [{ to: 'C', says: 'they meet here' }],
        },
        {
          is: 'note',
          at: facts.lastSeq,
          text: `All eight lines are computed together, and none is forced to fit. ${closing} Had one line been walked with a chip, the places where it meets the others would say so.`,
          arrows: [{ to: 'C', says: 'four lines meet here' }],
        },
      ],
    };
  },
};
