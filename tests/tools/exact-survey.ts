import type { Header, TakeEvent } from '../../shared/session/events.ts';
import { fold, type Session } from '../../shared/session/fold.ts';
import { type SetupInput, setupSchema } from '../../shared/session/setup.ts';
import { placementsOf } from '../../shared/survey/plan.ts';
import { planFor } from '../../shared/survey/plan-for.ts';

/** Height of a made-up surface, µm, at a place of the plan, mm. */
export type Surface = (xMm: number, yMm: number) => number;

/** Added to every reading, µm/m: a zero, or an error that one wants to see found. */
export type Added = (run: string, at: readonly string[]) => number;

/**
 * Constructed: a survey with a level whose readings (µm/m) follow from a surface without any noise.
 * @param takes how many placements are read, in the order of the plan; left out: all
 */
export function exactSurvey(
  input: SetupInput,
  surface: Surface,
  added: Added = () => 0,
  takes = Number.POSITIVE_INFINITY,
): Session {
  const setup = setupSchema.parse(input);
  const plan = planFor(setup);
  const placeOf = new Map(plan.stations.map((station) => [station.name, station]));
  const events = plan.runs
    .filter(({ wanted }) => wanted)
    .flatMap((run) => (run.reads === 'tilt' ? placementsOf(run).map((place) => ({ run, place })) : []))
    .slice(0, takes)
    .map(({ run, place }, k): TakeEvent => {
      const [a, b] = place.at.map((name) => placeOf.get(name)!);
      const riseUm = surface(b!.xMm, b!.yMm) - surface(a!.xMm, a!.yMm);
      const slope = (1000 * riseUm) / Math.hypot(b!.xMm - a!.xMm, b!.yMm - a!.yMm);
      return {
        seq: k + 1,
        t: 1000 * k,
        m: 1000 * k,
        type: 'take',
        place,
        from: setup.instrument.name,
        value: run.facing * slope + added(run.id, place.at),
        spread: null,
        readings: null,
        count: 1,
        by: 'typed',
        steadiness: null,
      };
    });
  const header: Header = { recording: 1, id: 'made', program: 'test', t: 0, setup };
  return fold(header, events);
}
