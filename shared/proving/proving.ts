import { z } from 'zod';
import { readingUnitSchema } from '../session/setup.ts';
import { heightUnits, tiltUnits } from '../units.ts';

/** What is done and said to get to know one instrument. Everything that is proved is derived from this. */

/** Each pose of an instrument in which it is read once, in order, under the step that it serves. */
const posesOf = {
  sign: ['rest', 'moved'],
  scale: ['flat', 'on-step'],
  zero: ['as-is', 'turned'],
  spread: ['seat-1', 'seat-2', 'seat-3', 'seat-4', 'seat-5'],
} as const;

export type ProvingStep = keyof typeof posesOf;
export type Pose = (typeof posesOf)[ProvingStep][number];

const poses = Object.values(posesOf).flat() as [Pose, ...Pose[]];

const line = z.string().trim().max(120);

const takeSchema = z.strictObject({
  pose: z.enum(poses),
  value: z.number().min(-1e9).max(1e9).describe('as the instrument reads'),
  spread: z
    .number()
    .min(0)
    .max(1e9)
    .nullable()
    .describe('standard deviation of the quiet needle; null when typed'),
});
export type ProvingTake = z.infer<typeof takeSchema>;

export const provingSchema = z
  .strictObject({
    name: line.min(1).describe('what the person calls the instrument'),
    reads: z.enum(['tilt', 'height']).describe('a level, or an indicator'),
    source: z.enum(['cable', 'typed']),
    port: z.string().min(1).max(300).optional().describe('identity of its adapter, for a cable'),
    profile: z.string().max(80).optional().describe('id of the instrument profile, for a cable'),
    channel: line.optional().describe('which of several channels on one cable'),
    serial: line.optional().describe('serial number of the instrument'),
    unit: readingUnitSchema.describe('unit of one count, or of one graduation'),
    unitOpen: z.boolean().describe('the person says the unit; false when the line or the profile tells it'),
    graduation: z.number().positive().max(1e6).describe('size of one count, or of one graduation, in `unit`'),
    resolution: z.number().positive().max(1e6).describe('smallest step of the reading, as it is read'),
    far: line.min(1).default('cable end').describe('end of the level that is called its far foot'),
    baseMm: z.number().positive().max(10_000).optional().describe('foot spacing of the level, mm'),
    stepUm: z
      .number()
      .positive()
      .max(1e6)
      .describe('size of the feeler, or difference of the gauge blocks, µm'),
    stepIs: z.enum(['feeler', 'block']),
    by: line.default(''),
    takes: z.array(takeSchema).max(20),
  })
  .refine(({ reads, unit }) => measuredIn(reads).includes(unit), {
    path: ['unit'],
    error: 'measures something else',
  })
  .refine(({ reads, baseMm }) => reads === 'height' || baseMm !== undefined, {
    path: ['baseMm'],
    error: 'a level needs its foot spacing',
  })
  .refine(({ takes }) => new Set(takes.map(({ pose }) => pose)).size === takes.length, {
    path: ['takes'],
    error: 'a pose is read once',
  })
  .refine(
    ({ source, port, profile }) => source === 'typed' || (port !== undefined && profile !== undefined),
    {
      path: ['port'],
      error: 'a cable has a port and a profile',
    },
  );
export type Proving = z.infer<typeof provingSchema>;

/** The units in which a level, or an indicator, can read. */
export function measuredIn(reads: 'tilt' | 'height'): readonly string[] {
  return reads === 'tilt' ? tiltUnits : heightUnits;
}

/** The steps of a proving, in order. An indicator has no zero of its own. */
export function stepsOf({ reads }: Pick<Proving, 'reads'>): readonly ProvingStep[] {
  return reads === 'tilt' ? ['sign', 'scale', 'zero', 'spread'] : ['sign', 'scale', 'spread'];
}

export function posesIn(step: ProvingStep): readonly Pose[] {
  return posesOf[step];
}

/** The takes of a step, in the order of its poses; null while one is missing. */
export function takesOf(proving: Proving, step: ProvingStep): readonly ProvingTake[] | null {
  const takes = posesOf[step].map((pose) => proving.takes.find((take) => take.pose === pose));
  return takes.every((take) => take !== undefined) ? takes : null;
}

/** The proving with one more take; a pose that was read before is read anew. */
export function withTake(proving: Proving, take: ProvingTake): Proving {
  return { ...proving, takes: [...proving.takes.filter(({ pose }) => pose !== take.pose), take] };
}

/** The proving with a step to be done again. */
export function again(proving: Proving, step: ProvingStep): Proving {
  const undone: readonly Pose[] = posesOf[step];
  return { ...proving, takes: proving.takes.filter(({ pose }) => !undone.includes(pose)) };
}
