import { z } from 'zod';
import { readingStateSchema } from '../shared/session/events.ts';
import { bytesSchema } from './bytes.ts';
import { binaryPartSchema, channelNameSchema, jsonPartSchema, textPartSchema } from './parts.ts';
import { quantitySchema, readUnitSchema } from './quantities.ts';
import { sumKinds } from './sums.ts';

/**
 * How an instrument talks, as data. A profile says how the line is set, when the instrument speaks, where a
 * frame ends, what proves it whole, and what stands in it; no code knows any instrument. The same profile is
 * read both ways: frames are read by it, and a simulated instrument speaks by it.
 */

const longest = z.number().int().min(2).max(4096).describe('a frame longer than this many bytes is none');

const lineSchema = z
  .strictObject({
    baudRate: z.number().int().min(50).max(4_000_000).describe('speed, bits a second'),
    dataBits: z.union([z.literal(7), z.literal(8)]).describe('bits of a character'),
    parity: z.enum(['none', 'even', 'odd']).describe('parity bit behind each character'),
    stopBits: z.union([z.literal(1), z.literal(2)]).describe('stop bits behind each character'),
    dtr: z
      .boolean()
      .optional()
      .describe(
        'set this control line: some interfaces are powered by it, some reset by it; left alone when left out',
      ),
    rts: z.boolean().optional().describe('set this control line; left alone when left out'),
    bootMs: z
      .number()
      .min(0)
      .max(60_000)
      .optional()
      .describe(
        'for so long after opening, ms, nothing is asked and nothing believed: the instrument starts up',
      ),
  })
  .describe('settings of the serial line');

const silentAfterMs = z
  .number()
  .positive()
  .max(600_000)
  .describe('quiet for this long, ms, means that something is wrong');

const talkSchema = z
  .discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('periodic').describe('it speaks by itself'),
      everyMs: z.number().positive().max(600_000).describe('usual time between two frames, ms'),
      silentAfterMs,
    }),
    z.strictObject({
      kind: z.literal('on-request').describe('it answers when asked'),
      request: bytesSchema.describe('bytes that ask for one frame'),
      everyMs: z.number().min(10).max(600_000).describe('how often to ask, ms'),
      silentAfterMs,
    }),
    z.strictObject({
      kind: z.literal('by-button').describe('it speaks when its own button is pressed; silence is no fault'),
    }),
  ])
  .describe('when the instrument speaks');

const frameSchema = z
  .discriminatedUnion('ends', [
    z.strictObject({
      ends: z.literal('delimiter').describe('a frame ends with certain bytes'),
      delimiter: bytesSchema.describe('bytes that end a frame; they are no part of it'),
      longest,
    }),
    z.strictObject({
      ends: z.literal('length').describe('every frame is equally long'),
      length: z.number().int().min(1).max(256).describe('bytes of a frame'),
      start: bytesSchema.optional().describe('bytes with which every frame begins'),
    }),
    z.strictObject({
      ends: z.literal('silence').describe('a pause ends a frame'),
      gapMs: z.number().min(1).max(5000).describe('a pause longer than this, ms, ends a frame'),
      longest,
    }),
  ])
  .describe('where a frame ends');

const sumSchema = z
  .strictObject({
    kind: z
      .enum(sumKinds)
      .describe(
        'xor of all bytes; sum8: low eight bits of their sum; lrc: what sum8 lacks to 256; CRC-16/MODBUS',
      ),
    from: z.number().int().min(0).max(255).default(0).describe('first byte that it covers, from 0'),
    mark: bytesSchema.optional().describe('bytes between what it covers and the checksum'),
    as: z.enum(['bytes', 'hex']).describe('written as raw bytes or as hex digits'),
    order: z.enum(['high-first', 'low-first']).default('high-first').describe('order of its two bytes'),
  })
  .describe('the checksum at the end of a frame; left out when there is none');

const saysSchema = z
  .discriminatedUnion('as', [
    z.strictObject({
      as: z.literal('text').describe('parts that follow each other; spaces between them don’t matter'),
      parts: z.array(textPartSchema).min(1).max(60).describe('in the order in which they come'),
      states: z
        .record(z.string().min(1).max(40), readingStateSchema.exclude(['ok']))
        .default({})
        .describe('whole frames that are a state of every channel and no number'),
    }),
    z.strictObject({
      as: z.literal('json').describe('a JSON object; keys that no part names don’t matter'),
      parts: z.array(jsonPartSchema).min(1).max(60).describe('in any order'),
    }),
    z.strictObject({
      as: z.literal('bytes').describe('raw bytes, parts by place'),
      size: z.number().int().min(1).max(256).describe('bytes before the checksum'),
      parts: z.array(binaryPartSchema).min(1).max(60).describe('in any order'),
    }),
    z.strictObject({
      as: z.literal('hex').describe('hex digits, parts by place, two digits a byte'),
      size: z.number().int().min(1).max(512).describe('hex digits before the checksum'),
      parts: z.array(binaryPartSchema).min(1).max(60).describe('in any order'),
    }),
  ])
  .describe('what stands in a frame');

const channelSchema = z
  .strictObject({
    name: channelNameSchema.describe('what parts, examples and set-ups call it'),
    quantity: quantitySchema.describe('what it measures'),
    unit: readUnitSchema.describe(
      'unit of the number when the frame does not name it, and of range, resolution and steadiness',
    ),
    unitKnown: z
      .boolean()
      .default(true)
      .describe('false: the line does not tell the unit and instruments differ; what the person says counts'),
    factor: z
      .number()
      .refine((factor) => factor !== 0, 'is nought')
      .default(1)
      .describe('how much of the unit one of the number as sent is; negative when the sign is the other way'),
    resolution: z.number().positive().optional().describe('smallest step that the instrument shows'),
    range: z
      .tuple([z.number(), z.number()])
      .optional()
      .describe('lowest and highest value that it can say; a frame with another one is none'),
    steady: z
      .strictObject({
        spread: z.number().positive().describe('standard deviation of a quiet window'),
        trend: z.number().positive().describe('change over a quiet window'),
      })
      .describe('limits of steadiness: what the noise of the instrument leaves when nothing moves'),
  })
  .describe('one of the values that the instrument tells');
export type Channel = z.infer<typeof channelSchema>;

const exampleSchema = z
  .strictObject({
    frame: z.string().max(800).describe('a frame without its delimiter; written as bytes are'),
    reads: z
      .record(
        channelNameSchema,
        z.strictObject({
          value: z.number().nullable().describe('as sent times the factor; null when the state is no number'),
          unit: readUnitSchema.optional().describe('only when the frame names it'),
          state: readingStateSchema.default('ok').describe('a condition of the reading'),
          decimals: z
            .number()
            .int()
            .optional()
            .describe('digits behind the point, where the frame shows them'),
        }),
      )
      .optional()
      .describe('what each channel says; left out when it is no frame'),
    why: z.string().max(200).optional().describe('why it is no frame, or what is remarkable'),
  })
  .describe('a frame and what it says');

export const profileSchema = z.strictObject({
  $schema: z.string().max(300).optional().describe('path of the JSON Schema, for an editor that completes'),
  profile: z.literal(2).describe('version of this form'),
  id: z
    .string()
    .regex(/^[a-z0-9-]{2,60}$/)
    .describe('name of the profile, and of its file'),
  title: z.string().min(1).max(80).describe('what goes over the wire, in words'),
  source: z.string().min(1).max(400).describe('where the layout is known from, and what is not checked'),
  line: lineSchema,
  talk: talkSchema,
  frame: frameSchema,
  sum: sumSchema.optional(),
  says: saysSchema,
  channels: z.array(channelSchema).min(1).max(16).describe('the values that the instrument tells'),
  steady: z
    .strictObject({
      windowMs: z.number().positive().max(600_000).describe('how long it must have been quiet, ms'),
      fewest: z.number().int().min(2).max(10_000).describe('fewest readings in that time'),
      movingFactor: z
        .number()
        .min(1)
        .max(1000)
        .describe('so many times over a limit is moving, not settling'),
    })
    .describe('the window in which steadiness is judged'),
  examples: z.array(exampleSchema).min(1).max(100).describe('frames and what they say; the tests run them'),
});
export type Profile = z.infer<typeof profileSchema>;
export type ProfileInput = z.input<typeof profileSchema>;
export type Says = Profile['says'];
export type Sum = NonNullable<Profile['sum']>;
