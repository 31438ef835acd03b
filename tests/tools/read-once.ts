import { seededRandom } from '../../daemon/simulate/random.ts';
import { demoScene } from '../../daemon/simulate/scenario.ts';
import { World } from '../../daemon/simulate/world.ts';
import { countOf } from '../../shared/notice/reading.ts';
import type { Header, TakeEvent } from '../../shared/session/events.ts';
import { type SetupInput, setupSchema } from '../../shared/session/setup.ts';
import { placementsOf } from '../../shared/survey/plan.ts';

/** Constructed: every placement of a demo survey read with a little noise. */
export function readOnce(input: SetupInput): { header: Header; events: TakeEvent[] } {
  const setup = setupSchema.parse(input);
  const world = new World(setup, demoScene(setup));
  const random = seededRandom(5);
  const events = world.plan.runs
    .filter(({ wanted }) => wanted)
    .flatMap(placementsOf)
    .map(
      (place, k): TakeEvent => ({
        seq: k + 1,
        t: 1000 * k,
        m: 1000 * k,
        type: 'take',
        place,
        from: setup.instrument.name,
        value: (world.reading(place) + random.even() - 0.5) / countOf(setup),
        spread: null,
        readings: null,
        count: 1,
        by: 'typed',
        steadiness: null,
      }),
    );
  return { header: { recording: 1, id: 'made', program: 'test', t: 0, setup }, events };
}
