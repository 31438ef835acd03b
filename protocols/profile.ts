import { z } from 'zod';
import { tiltUnitSchema } from '../shared/session/setup.ts';

/**
 * How an instrument talks, as data. A profile says how the line is set, when the instrument speaks,
 * where a frame ends, and what stands in it; no code knows any instrument.
 */

const lineSchema = z
  .strictObject({
    baudRate: z.number().int().min(50).max(4_000_000),
    dataBits: z.union([z.literal(7), z.literal(8)]),
    parity: z.enum(['none', 'even', 'odd']),
    stopBits: z.union([z.literal(1), z.literal(2)]),
    dtr: z.boolean().optional().describe('hold this line up: some interfaces are powered by it'),
    rts: z.boolean().optional().describe('hold this line up'),
  })
  .describe('settings of the serial line');

const talkSchema = z
  .discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('periodic'),
      everyMs: z.number().positive().describe('usual time between two frames'),
      silentAfterMs: z.number().positive().describe('quiet for this long means that something is wrong'),
    }),
    z.strictObject({
      kind: z.literal('on-request'),
      request: z.string().min(1).max(80).describe('bytes that ask for one frame, one character a byte'),
      everyMs: z.number().min(10).describe('how often to ask'),
      silentAfterMs: z.number().positive().describe('no answer for this long means that something is wrong'),
    }),
  ])
  .describe('when the instrument speaks');

const frameSchema = z
  .strictObject({
    delimiter: z.string().min(1).max(4).describe('bytes that end a frame'),
    longest: z.number().int().min(2).max(4096).describe('a frame longer than this is none'),
  })
  .describe('where a frame ends');

const decimalSchema = z
  .strictObject({
    kind: z.literal('decimal'),
    lead: z.string().max(20).default('').describe('text that must stand before the number'),
    digits: z
      .tuple([z.number().int().min(1).max(9), z.number().int().min(1).max(12)])
      .describe('fewest and most digits in all; a whole frame never has fewer'),
    sign: z
      .enum(['always', 'minus-only'])
      .describe('always: a frame without its sign has lost its head and is none'),
    decimals: z.number().int().min(0).max(9).optional().describe('digits behind the point, when it is fixed'),
    units: z
      .record(z.string().min(1).max(12), tiltUnitSchema)
      .default({})
      .describe('unit texts that may follow the number, and what they mean'),
    states: z
      .record(z.string().min(1).max(20), z.enum(['over-range', 'low-battery', 'hold', 'error']))
      .default({})
      .describe('whole frames that are a state and no number'),
  })
  .describe('what stands in a frame: a signed decimal, perhaps with a unit');

export const profileSchema = z.strictObject({
  profile: z.literal(1),
  id: z.string().regex(/^[a-z0-9-]{2,60}$/),
  title: z.string().min(1).max(80).describe('what goes over the wire, in words'),
  line: lineSchema,
  talk: talkSchema,
  frame: frameSchema,
  says: decimalSchema,
  unit: tiltUnitSchema.optional().describe('unit of the number when the frame does not name it'),
  steady: z
    .strictObject({
      windowMs: z.number().positive(),
      fewest: z.number().int().min(2),
      spreadUmPerM: z.number().positive(),
      trendUmPerM: z.number().positive(),
      movingFactor: z.number().min(1),
    })
    .describe('limits of steadiness: what the noise of the instrument leaves when nothing moves'),
  settleMs: z
    .number()
    .min(0)
    .default(0)
    .describe('after opening, frames are thrown away for this long: old ones may still come'),
  examples: z
    .array(
      z.strictObject({
        frame: z.string(),
        value: z.number().nullable().optional(),
        unit: tiltUnitSchema.optional(),
        state: z.string().optional(),
        whole: z.boolean().default(true),
      }),
    )
    .min(1)
    .describe('frames, without their delimiter, and what they say'),
});
export type Profile = z.infer<typeof profileSchema>;
