import type { LessonInput } from '../../../shared/lesson/lesson.ts';
import { type SetupInput, setupSchema } from '../../../shared/session/setup.ts';
import type { Plan } from '../../../shared/survey/plan.ts';
import { Conductor, type Hand, type Pace } from '../conduct.ts';
import type { Facts } from './facts.ts';

/** One lesson: how its recording is made, and what is told beside it. Everything in it is invented. */
export interface Scenario {
  readonly id: string;
  make(): Promise<Conductor>;
  tell(facts: Facts): Omit<LessonInput, 'lesson' | 'recording'>;
}

/** Slow enough to see what the hand does, with no more frames than that needs. */
const teachingPace: Pace = { everyMs: 180, inHandMs: 1260, standsMs: 540 };
const begun = Date.UTC(2026, 2, 9, 8, 0, 0);

export const steps = 8;
const level = {
  name: 'level L5',
  serial: 'simulated',
  source: 'cable',
  port: 'simulated',
  profile: 'line-decimal',
  unit: 'um/m',
  sigma: 0.3,
  provedOn: '2026-03-06',
} as const;

/** The way that most lessons walk: eight steps of 150 mm. */
export const way: Extract<SetupInput, { kind: 'way' }> = {
  kind: 'way',
  part: 'Bench lathe 12, bed',
  surface: 'front way',
  prefix: 'F',
  lengthMm: 1200,
  baseMm: 150,
  stations: steps + 1,
  back: 'same',
  operator: 'the teacher',
  support: '3 feet, carriage off',
  partC: 20,
  airC: 20.2,
  instrument: level,
};

/** The bed of the lessons about twist: six steps of 200 mm on each way, read across at every station. */
export const bed: Extract<SetupInput, { kind: 'bed' }> = {
  kind: 'bed',
  part: 'Bench lathe 12, bed',
  surface: 'bed',
  lengthMm: 1200,
  gaugeMm: 300,
  baseMm: 200,
  stations: 7,
  back: 'no',
  operator: 'the teacher',
  support: '4 levelling screws',
  instrument: level,
};

/** Twenty µm hollow, smooth, as carriages wear them; mm → µm. */
export const hollow = (x: number): number => -80 * (x / 1200) * (1 - x / 1200);

export interface Staged {
  readonly setup?: SetupInput;
  readonly surface?: (xMm: number, yMm: number) => number;
  readonly hand?: Hand;
  readonly seed?: number;
  readonly zero?: number;
}

/** An instrument on its metal, before the first reading. */
export function stage(id: string, { setup = way, surface = hollow, hand, seed = 5, zero = 30 }: Staged) {
  return Conductor.of({
    id,
    setup: setupSchema.parse(setup),
    scene: { name: 'a lesson', surface },
    seed,
    t: begun,
    pace: teachingPace,
    traits: { zero, noise: 0.35, driftPerHour: 0, settleMs: 420, swing: 120 },
    ...(hand && { hand }),
  });
}

/** A survey that is simply walked to its end. */
export async function walked(id: string, staged: Staged): Promise<Conductor> {
  const conductor = await stage(id, staged);
  await conductor.walk();
  await conductor.end();
  return conductor;
}

export const plus =
  (extra: (nth: number) => number): Hand =>
  (place, nth, world) =>
    world.reading(place) + extra(nth);

/** From the nth step of the way out, the feet stand so many steps further than they should. */
export const shifted =
  (from: number, by: number): Hand =>
  (place, nth, world) =>
    world.reading(nth >= from && nth < steps ? stepOf(world.plan, nth + by) : place);

function stepOf({ runs }: Plan, k: number) {
  const [out] = runs;
  if (out?.reads !== 'tilt') throw new Error('no walk');
  return { run: out.id, at: out.feet[Math.min(k, out.feet.length - 1)]! };
}
