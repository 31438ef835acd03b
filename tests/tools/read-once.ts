import { seededRandom } from '../../daemon/simulate/random.ts';
import { demoScene } from '../../daemon/simulate/scenario.ts';
import { World } from '../../daemon/simulate/world.ts';
import { countOf } from '../../shared/notice/reading.ts';
import type { Header, TakeEvent } from '../../shared/session/events.ts';
import { type SetupInput, setupSchema } from '../../shared/session/setup.ts';
import { type Placement, placementsOf } from '../../shared/survey/plan.ts';

export function worldOf(input: SetupInput): World {
  const setup = setupSchema.parse(input);
  return new World(setup, demoScene(setup));
}

/**
 * Constructed: every placement of a demo survey read with a little noise.
 * @param stands what the instrument reads where it stands; as a good hand sets it down when left out
 */
export function readOnce(
  input: SetupInput,
  stands?: (place: Placement, nth: number) => number,
): { header: Header; events: TakeEvent[] } {
  const setup = setupSchema.parse(input);
  const world = worldOf(input);
  const random = seededRandom(5);
  const count = countOf(setup);
  // Evenly spread so far, it scatters by the sigma of the set-up.
  const noise = Math.sqrt(12) * (setup.instrument.sigma ?? 0.3 / count) * count;
  const reading = stands ?? ((place) => world.reading(place));
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
        value: (reading(place, k) + noise * (random.even() - 0.5)) / count,
        spread: null,
        readings: null,
        count: 1,
        by: 'typed',
        steadiness: null,
      }),
    );
  return { header: { recording: 1, id: 'made', program: 'test', t: 0, setup }, events };
}
