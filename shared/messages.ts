import { z } from 'zod';
import { provingSchema } from './proving/proving.ts';
import { conditionsShape } from './session/conditions.ts';
import {
  eventSchema,
  headerSchema,
  placementSchema,
  printShape,
  readingStateSchema,
  steadinessSchema,
  takenBySchema,
} from './session/events.ts';
import { plantedFaults, plantedSchema } from './session/planted.ts';
import { readingUnitSchema, setupSchema } from './session/setup.ts';

/**
 * What crosses the WebSocket. The page folds the same events as the daemon; the only things that are not
 * events are the needle (`live`, droppable) and the state of instruments and ports.
 */

export const errorSchema = z.object({
  code: z.string(),
  place: z.string(),
  message: z.string(),
  remedy: z.string(),
});
export type SentError = z.infer<typeof errorSchema>;

export const linkStateSchema = z.enum(['absent', 'opening', 'open', 'faulted']);
export type LinkState = z.infer<typeof linkStateSchema>;

/** One instrument as the daemon sees it. */
export const instrumentSchema = z.object({
  name: z.string(),
  port: z.string(),
  profile: z.string(),
  kind: z.enum(['periodic', 'on-demand', 'by-button']),
  link: linkStateSchema,
  error: errorSchema.optional().describe('why it is not open, and what helps'),
  unit: z.string(),
  silent: z.boolean().describe('periodic, open, and yet no whole frame came for too long'),
  unread: z.boolean().optional().describe('silent, and yet bytes come: none that its profile can read'),
  frames: z.number().int(),
  discarded: z.number().int(),
});
export type InstrumentState = z.infer<typeof instrumentSchema>;

/** The needle now. May be merged or dropped for a slow page. */
export const liveSchema = z.object({
  from: z.string(),
  m: z.number(),
  value: z.number().nullable(),
  state: readingStateSchema,
  steadiness: steadinessSchema,
  mean: z.number().nullable(),
  spread: z.number().nullable(),
  trend: z.number().nullable(),
  spreadLimit: z.number().optional().describe('largest spread that still counts as steady'),
  steadyForMs: z.number(),
  armed: z.boolean().describe('a take needs no insisting: nothing was taken where it stands'),
  moved: z.boolean().optional().describe('hands-free: a move was felt, so that it takes once steady'),
  bounced: z
    .literal(true)
    .optional()
    .describe('its own button sent the same frame twice in a moment: it was pressed once'),
});
export type Live = z.infer<typeof liveSchema>;

/** What a page may do: everything on this computer and on a paired device, elsewhere only watch. */
export const accessSchema = z.enum(['local', 'paired', 'watching']);
export type Access = z.infer<typeof accessSchema>;

/** The simulated instrument of the demo: what its hand is doing. */
export const simulatedSchema = z.object({
  scenario: z.string(),
  walking: z.boolean().describe('a walker moves the level by itself'),
  lifted: z.boolean(),
  standsOn: placementSchema.nullable(),
});
export type SimulatedState = z.infer<typeof simulatedSchema>;

/** A port that a page wants to be listened to while no survey is on. */
export const wantedPortSchema = z.strictObject({
  port: z.string().min(1).max(300).describe('identity of its adapter, or its path'),
  profile: z
    .string()
    .min(1)
    .max(80)
    .optional()
    .describe('the person has assigned the port: only then may anything be written to it'),
  quiet: z
    .number()
    .positive()
    .optional()
    .describe(
      'largest spread that counts as steady, as sent, where the unit of the profile can’t be trusted',
    ),
});
export type WantedPort = z.infer<typeof wantedPortSchema>;

/** One of the values of an assigned port that can be measured with. */
export const benchStreamSchema = z.object({
  id: z.string(),
  port: z.string(),
  channel: z.string(),
  reads: z.enum(['tilt', 'height']),
  unit: readingUnitSchema.describe('unit of its needle'),
  unitOpen: z.boolean().describe('neither line nor profile tells the unit'),
  byButton: z.boolean().describe('it speaks when its own button is pressed'),
  resolution: z.number().positive().describe('smallest step that it shows, in its unit'),
  range: z.tuple([z.number(), z.number()]).optional().describe('what it can read at all, in its unit'),
  quiet: z.number().positive().describe('largest spread that still counts as steady, in its unit'),
});
export type BenchStream = z.infer<typeof benchStreamSchema>;

/** A port that is listened to: what comes, and which profiles understand it. */
export const benchPortSchema = z.object({
  ...wantedPortSchema.shape,
  link: linkStateSchema,
  error: errorSchema.optional(),
  silent: z.boolean().describe('assigned, open, and yet no whole frame came for too long'),
  unread: z.boolean().describe('bytes come, and none that a profile can read'),
  line: z.string().describe('how the line is set, in words'),
  hex: z.string().describe('the newest bytes as they came'),
  bytes: z.number().int().describe('bytes that came so far'),
  hint: z.string().nullable().describe('what helps when no profile understands it'),
  fits: z.array(
    z.object({
      profile: z.string(),
      title: z.string(),
      frames: z.number().int().describe('frames that it understood'),
      discarded: z.number().int().describe('pieces that it did not'),
      reads: z.array(
        z.object({
          channel: z.string(),
          value: z.number().nullable(),
          unit: z.string().optional(),
          state: readingStateSchema,
        }),
      ),
    }),
  ),
  streams: z.array(benchStreamSchema),
});
export type BenchPort = z.infer<typeof benchPortSchema>;

export const benchSchema = z.object({ ports: z.array(benchPortSchema) });
export type BenchState = z.infer<typeof benchSchema>;

const snapshot = z.object({
  header: headerSchema,
  events: z.array(eventSchema).describe('every event but the stream of readings'),
  seq: z.number().int().describe('number of the last event, the stream of readings counted'),
});

export const toPageSchema = z.discriminatedUnion('type', [
  z.object({
    type: z.literal('hello'),
    program: z.string(),
    mode: z.enum(['serve', 'demo']),
    session: snapshot.nullable(),
    instruments: z.array(instrumentSchema),
    simulated: simulatedSchema.nullable(),
    bench: benchSchema.nullish().describe('ports that are listened to while no survey is on'),
  }),
  z.object({
    type: z.literal('access').describe('the first message of all'),
    access: accessSchema,
    lan: z.boolean().describe('whether devices in the network are let in'),
  }),
  z.object({ type: z.literal('events'), id: z.string(), events: z.array(eventSchema) }),
  z.object({ type: z.literal('live'), live: liveSchema }),
  z.object({ type: z.literal('instruments'), instruments: z.array(instrumentSchema) }),
  z.object({ type: z.literal('simulated'), simulated: simulatedSchema.nullable() }),
  z.object({ type: z.literal('bench'), bench: benchSchema.nullable() }),
  z.object({
    type: z.literal('bench-live').describe('a needle of the bench; may be dropped'),
    live: liveSchema,
  }),
  z.object({
    type: z.literal('refused').describe('a take that nobody asked for by hand was due, and was refused'),
    error: errorSchema,
  }),
  z.object({ type: z.literal('answer'), to: z.number().int(), error: errorSchema.nullable() }),
]);
export type ToPage = z.infer<typeof toPageSchema>;

const reason = z.string().trim().max(300);

/** What a page may ask. Each is answered with `answer`; an event that follows from it comes on its own. */
export const commandSchema = z.discriminatedUnion('do', [
  z.strictObject({
    do: z.literal('start'),
    setup: setupSchema,
    practice: z
      .array(plantedSchema)
      .min(1)
      .max(plantedFaults.length)
      .optional()
      .describe('plant one of these faults in a simulated survey, to be found'),
  }),
  z.strictObject({
    do: z.literal('take'),
    by: takenBySchema.extract(['key', 'button', 'pedal']),
    insist: z.boolean().default(false).describe('take although it is not steady; the take is marked so'),
  }),
  z.strictObject({
    do: z.literal('type'),
    text: z.string().max(40),
    keyed: z
      .tuple([z.number(), z.number()])
      .optional()
      .describe('typed by an instrument that poses as a keyboard: wall clock at its first and last key'),
    again: z.boolean().default(false).describe('it was asked back, and is sent again as it is'),
  }),
  z.strictObject({ do: z.literal('void'), take: z.number().int(), reason }),
  z.strictObject({ do: z.literal('aim'), place: placementSchema }),
  z.strictObject({ do: z.literal('skip'), place: placementSchema, reason }),
  z.strictObject({
    do: z.literal('note'),
    text: z.string().trim().min(1).max(2000),
    place: placementSchema.optional(),
  }),
  z.strictObject({ do: z.literal('print'), ...printShape }),
  z.strictObject({
    do: z.literal('conditions'),
    ...conditionsShape,
  }),
  z.strictObject({ do: z.literal('take-drift-off'), off: z.boolean() }),
  z.strictObject({
    do: z.literal('turned').describe('the level was turned end for end: from here on it faces the other way'),
  }),
  z.strictObject({ do: z.literal('hands-free'), on: z.boolean() }),
  z.strictObject({
    do: z.literal('sweep').describe('the tip slides on over the run that is next: each take marks a place'),
    by: z.enum(['marks', 'even', 'off']),
  }),
  z.strictObject({ do: z.literal('run'), run: z.string().min(1).max(160), on: z.boolean() }),
  z.strictObject({ do: z.literal('acknowledge-unit') }),
  z.strictObject({ do: z.literal('finish') }),
  z.strictObject({ do: z.literal('resume'), id: z.string().max(80).describe('go on with a recording') }),
  z.strictObject({ do: z.literal('leave').describe('put the session aside; it stays on disk') }),
  z.strictObject({
    do: z.literal('bench').describe('listen to exactly these ports; none ends it'),
    ports: z.array(wantedPortSchema).max(8),
  }),
  z.strictObject({ do: z.literal('keep-instrument'), proving: provingSchema }),
  z.strictObject({
    do: z.literal('bind-instrument').describe('an instrument that was proved hangs on this port now'),
    name: z.string().min(1).max(120),
    port: z.string().min(1).max(300),
  }),
  z.strictObject({ do: z.literal('sim-lift') }),
  z.strictObject({ do: z.literal('sim-set-down').describe('on the next placement') }),
  z.strictObject({ do: z.literal('sim-push').describe('a bump with the elbow') }),
  z.strictObject({ do: z.literal('sim-walk'), on: z.boolean() }),
  z.strictObject({ do: z.literal('since'), seq: z.number().int().min(0) }),
]);
export type Command = z.infer<typeof commandSchema>;
export type CommandInput = z.input<typeof commandSchema>;

/** A command with the number that its answer will name. */
export const fromPageSchema = z.strictObject({ ask: z.number().int().min(0), command: commandSchema });
export type FromPage = z.input<typeof fromPageSchema>;
