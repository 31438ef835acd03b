import { z } from 'zod';
import { conditionsShape } from './conditions.ts';
import { plantedSchema } from './planted.ts';
import { readingUnitSchema, setupSchema } from './setup.ts';

/**
 * What a recording holds: one header, then numbered events. Nothing is ever edited or taken away;
 * a take that was wrong is followed by a `void` that says why.
 *
 * `t` is the wall clock in ms since 1970, `m` a monotonic clock in ms that starts anew with the daemon.
 * Both are stamped once, when the bytes came in or the person acted.
 */

const stationName = z.string().min(1).max(20);

/** Wall clock, ms since 1970, as far as dates go (ECMA-262, 21.4.1.1). */
const wallClock = z.number().min(-8.64e15).max(8.64e15);

export const placementSchema = z.object({
  run: z.string().min(1).max(160).describe('the walk or sweep of the plan'),
  at: z
    .union([z.tuple([stationName, stationName]), z.tuple([stationName])])
    .describe('the stations of the two feet, or of the tip'),
});

/** Conditions of a reading that are no number. */
export const readingStateSchema = z.enum(['ok', 'over-range', 'low-battery', 'hold', 'error']);
export type ReadingState = z.infer<typeof readingStateSchema>;

export const takenBySchema = z.enum(['key', 'button', 'pedal', 'hands-free', 'typed', 'instrument']);
export type TakenBy = z.infer<typeof takenBySchema>;

export const steadinessSchema = z.enum(['moving', 'settling', 'steady']);
export type Steadiness = z.infer<typeof steadinessSchema>;

/** A print: what marking ink from a reference showed on the stations of the survey. */
export const printShape = {
  against: z.string().trim().min(1).max(120).describe('the straightedge or plate that carried the ink'),
  stations: z.record(
    stationName,
    z.object({
      shows: z.boolean().describe('whether it took colour'),
      pointsPerInch2: z.number().min(0).max(1000).optional().describe('points in a square inch'),
      coverage: z.number().min(0).max(1).optional().describe('share of the area that bears'),
    }),
  ),
  hingesMm: z
    .array(z.number().min(-1e6).max(1e6))
    .max(4)
    .optional()
    .describe('where the reference turns when it is swung, mm along from the start end'),
  photo: z
    .object({ file: z.string().min(1).max(120), sha256: z.string().regex(/^[0-9a-f]{64}$/) })
    .optional()
    .describe('a photograph of it, kept beside the recording and known by its digest'),
};

const stamp = { seq: z.number().int().min(1), t: wallClock, m: z.number() };

export const eventSchema = z.discriminatedUnion('type', [
  z.object({
    ...stamp,
    type: z.literal('reading'),
    from: z.string().describe('name of the instrument'),
    raw: z.string().describe('the frame as it came, one character a byte'),
    value: z.number().nullable().describe('in the unit of the set-up; null when the state is no number'),
    unit: readingUnitSchema.optional().describe('as sent, when the frame itself names it'),
    state: readingStateSchema.optional().describe('only when not ok'),
  }),
  z.object({
    ...stamp,
    type: z.literal('discarded'),
    from: z.string(),
    hex: z.string().describe('the bytes that were no frame'),
    why: z.string(),
  }),
  z.object({
    ...stamp,
    type: z.literal('gap'),
    from: z.string(),
    is: z.enum(['lost', 'back']),
    why: z.string(),
  }),
  z.object({
    ...stamp,
    type: z.literal('take'),
    place: placementSchema,
    from: z.string(),
    value: z.number().describe('mean of the readings used, as the instrument reads'),
    spread: z.number().nullable().describe('standard deviation of the readings used; null for one alone'),
    readings: z
      .tuple([z.number().int(), z.number().int()])
      .nullable()
      .describe('seq of the first and last reading used'),
    count: z.number().int().min(1).describe('how many readings were averaged'),
    by: takenBySchema,
    steadiness: steadinessSchema.nullable().describe('null for one reading alone'),
    raw: z.string().optional().describe('the text as typed, or as an instrument typed it'),
    sentAgain: z
      .literal(true)
      .optional()
      .describe('asked back, for it lies far from the others, and sent again'),
    keyed: z
      .tuple([z.number(), z.number()])
      .optional()
      .describe('wall clock at the first and the last key, when an instrument posed as a keyboard'),
    reference: z
      .object({
        from: z.string().describe('name of the level that stays put'),
        value: z.number().describe('its mean at the times of the readings used, as it reads'),
        spread: z.number().describe('its standard deviation at these times'),
        readings: z.tuple([z.number().int(), z.number().int()]).describe('seq of its first and last reading'),
      })
      .optional()
      .describe('what the reference level said meanwhile; not yet taken off `value`'),
    replaces: z.number().int().optional().describe('seq of the take that this one repeats'),
    swept: z
      .object({
        by: z
          .enum(['marks', 'even'])
          .describe('marked as the tip passed, or at an even pace between two marks'),
        way: z.enum(['out', 'back']).describe('which way the tip slid, by the order of the stations'),
        atM: z.number().describe('monotonic clock when it passed the station, ms'),
      })
      .optional()
      .describe('read while the tip slid on; `spread` is then about the straight line in time'),
  }),
  z.object({ ...stamp, type: z.literal('void'), take: z.number().int(), reason: z.string().max(300) }),
  z.object({ ...stamp, type: z.literal('skip'), place: placementSchema, reason: z.string().max(300) }),
  z.object({ ...stamp, type: z.literal('aim'), place: placementSchema }),
  z.object({
    ...stamp,
    type: z.literal('run'),
    run: z.string().min(1).max(160),
    on: z.boolean().describe('true: this run of the plan is wanted too; false: it is given up'),
  }),
  z.object({
    ...stamp,
    type: z.literal('note'),
    text: z.string().max(2000),
    place: placementSchema.optional(),
  }),
  z.object({ ...stamp, type: z.literal('print'), ...printShape }),
  z.object({
    ...stamp,
    type: z.literal('conditions'),
    ...conditionsShape,
  }),
  z.object({
    ...stamp,
    type: z.literal('drift'),
    off: z.boolean().describe('true: a steady drift is taken off where out and back tell it from a bow'),
  }),
  z.object({
    ...stamp,
    type: z.literal('turned').describe('the level was turned end for end in the middle of this walk'),
    run: z.string().min(1).max(160),
    on: z
      .boolean()
      .describe('true: from here on it faces the other way than planned; false: as planned again'),
  }),
  z.object({ ...stamp, type: z.literal('hands-free'), on: z.boolean() }),
  z.object({
    ...stamp,
    type: z
      .literal('sweeping')
      .describe('the tip slides on over this run without a stop, or does so no more'),
    run: z.string().min(1).max(160),
    by: z.enum(['marks', 'even', 'off']),
  }),
  z.object({
    ...stamp,
    type: z.literal('mark').describe('the tip passed this place while it slid on'),
    place: placementSchema,
  }),
  z.object({
    ...stamp,
    type: z.literal('unit'),
    from: z.string(),
    unit: readingUnitSchema,
    acknowledged: z
      .boolean()
      .describe('false: the instrument changed its unit; true: the person has seen it'),
  }),
  z.object({
    ...stamp,
    type: z.literal('resumed'),
    why: z.string(),
    torn: z.string().optional().describe('bytes of a torn last line that were set aside, hex'),
  }),
  z.object({ ...stamp, type: z.literal('aside').describe('put aside by the person, to go on later') }),
  z.object({ ...stamp, type: z.literal('end') }),
]);
export type SessionEvent = z.infer<typeof eventSchema>;
export type EventOf<T extends SessionEvent['type']> = Extract<SessionEvent, { type: T }>;
export type TakeEvent = EventOf<'take'>;

/** When something happened, on both clocks. */
export type Stamp = Pick<SessionEvent, 't' | 'm'>;

type WithoutStamp<E> = E extends unknown ? Omit<E, 'seq' | 't' | 'm'> : never;
/** An event before the recorder numbers and stamps it. */
export type NewEvent = WithoutStamp<SessionEvent>;

export const headerSchema = z.object({
  recording: z.literal(1),
  id: z.string().regex(/^[a-z0-9][a-z0-9-]{0,79}$/),
  program: z.string().describe('program and version that wrote the file'),
  t: wallClock.describe('wall clock when the session began, ms since 1970'),
  setup: setupSchema,
  profile: z.unknown().optional().describe('copy of the instrument profile in use'),
  otherProfiles: z.array(z.unknown()).optional().describe('the same for the others, in their order'),
  simulated: z
    .object({
      scenario: z.string(),
      truthUm: z.record(z.string(), z.number()).describe('true height of each station, µm'),
      planted: plantedSchema.optional().describe('for practice: what was planted, to be found'),
      plantedAt: placementSchema.optional().describe('where it was made, or began'),
    })
    .optional()
    .describe('only for simulated instruments: what a perfect survey would find'),
});
export type Header = z.infer<typeof headerSchema>;

/** Events that a page needs to draw the session: all but the streams of readings and of what was none. */
export function isKept(event: SessionEvent): boolean {
  return event.type !== 'reading' && event.type !== 'discarded';
}
