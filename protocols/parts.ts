import { z } from 'zod';
import { readingStateSchema } from '../shared/session/events.ts';
import { bytesSchema } from './bytes.ts';
import { readUnitSchema } from './quantities.ts';

/**
 * The parts that a frame is made of. The same handful serves text, JSON and binary; what differs is how a
 * part is found: text parts follow each other, JSON parts have a path, binary parts a place.
 */

export const channelNameSchema = z.string().regex(/^[a-z][a-z0-9-]{0,19}$/);

const channel = channelNameSchema.describe('name of the channel that this part belongs to');
const whose = channelNameSchema
  .optional()
  .describe('name of the channel that this part belongs to; every channel when left out');
const means = <T extends z.ZodType>(what: T) =>
  z.record(z.string().min(1).max(40), what).refine((table) => Object.keys(table).length > 0);
const units = means(readUnitSchema).describe('each text that may stand here, and the unit that it means');
const states = means(readingStateSchema).describe('each text that may stand here, and the state it means');
const instead = z
  .record(z.string().min(1).max(40), readingStateSchema.exclude(['ok']))
  .default({})
  .describe('texts that may stand in place of the number, and the state they mean');
const optional = z.boolean().default(false).describe('whether the part may be missing');

export const textPartSchema = z.discriminatedUnion('part', [
  z.strictObject({
    part: z.literal('fixed').describe('text that must stand here'),
    text: bytesSchema,
    optional,
  }),
  z.strictObject({
    part: z
      .literal('skip')
      .describe('characters that say nothing about the reading, as a clock or a counter'),
    of: z.string().min(1).max(100).describe('the characters that may stand here'),
    length: z
      .tuple([z.number().int().min(1).max(200), z.number().int().min(1).max(200)])
      .describe('fewest and most of them'),
    optional,
  }),
  z.strictObject({
    part: z.literal('number').describe('a decimal number'),
    channel,
    sign: z
      .enum(['always', 'minus-only', 'never'])
      .describe(
        'always: a number without its sign has lost its head and is none; minus-only: a plus may be left out',
      ),
    digits: z
      .tuple([z.number().int().min(1).max(15), z.number().int().min(1).max(15)])
      .describe('fewest and most digits in all, before the exponent; a whole number never has fewer'),
    decimals: z
      .number()
      .int()
      .min(0)
      .max(12)
      .optional()
      .describe('digits behind the point, when it is fixed'),
    point: z.enum(['.', ',']).default('.').describe('the decimal sign'),
    exponent: z.boolean().default(false).describe('whether an exponent of ten follows, as in +1.5E-03'),
    instead,
  }),
  z.strictObject({
    part: z.literal('unit').describe('the unit of the number'),
    channel: whose,
    means: units,
    optional,
  }),
  z.strictObject({
    part: z.literal('state').describe('a condition of the instrument'),
    channel: whose,
    means: states,
    optional,
  }),
]);
export type TextPart = z.infer<typeof textPartSchema>;
export type TextNumber = Extract<TextPart, { part: 'number' }>;

const path = z
  .array(z.string().min(1).max(60))
  .min(1)
  .max(8)
  .describe('keys that lead to it from the outside in; in a list the number of the place, from "0"');

export const jsonPartSchema = z.discriminatedUnion('part', [
  z.strictObject({ part: z.literal('number').describe('a JSON number'), channel, path, instead }),
  z.strictObject({
    part: z.literal('unit').describe('the unit of the number'),
    channel: whose,
    path,
    means: units,
    optional,
  }),
  z.strictObject({
    part: z.literal('state').describe('a condition of the instrument'),
    channel: whose,
    path,
    means: states,
    optional,
  }),
]);

const places = z
  .array(z.number().int().min(0).max(255))
  .min(1)
  .max(16)
  .describe('places from 0, the most significant first');
const at = z
  .union([z.strictObject({ bytes: places }), z.strictObject({ nibbles: places })])
  .describe('where it stands: bytes, or half bytes with the high half of a byte first');

export const binaryPartSchema = z.discriminatedUnion('part', [
  z.strictObject({
    part: z.literal('fixed').describe('what must stand here'),
    at,
    hex: z
      .string()
      .regex(/^[0-9a-fA-F]+$/)
      .max(32)
      .describe('hex digits, as many as it takes half bytes'),
  }),
  z.strictObject({
    part: z.literal('number').describe('a number in binary or in decimal digits'),
    channel,
    at,
    is: z
      .enum(['int', 'uint', 'bcd', 'float'])
      .describe(
        'int: two’s complement; uint: without sign; bcd: one digit a nibble; float: IEEE 754, 4 or 8 bytes',
      ),
    decimals: z
      .number()
      .int()
      .min(0)
      .max(12)
      .optional()
      .describe('digits behind a point that is not sent; not for float, and not beside a decimals part'),
    instead: instead.describe('hex digits that may stand in place of the number, and the state they mean'),
  }),
  z.strictObject({
    part: z.literal('sign').describe('sign of an unsigned number'),
    channel,
    at,
    plus: z
      .string()
      .regex(/^[0-9a-f]+$/)
      .describe('hex digits of plus'),
    minus: z
      .string()
      .regex(/^[0-9a-f]+$/)
      .describe('hex digits of minus'),
  }),
  z.strictObject({
    part: z.literal('decimals').describe('how many digits stand behind the point'),
    channel,
    at,
    most: z.number().int().min(1).max(9).describe('more than this many is no frame'),
  }),
  z.strictObject({
    part: z.literal('unit').describe('the unit of the number'),
    channel: whose,
    at,
    means: units.describe('by hex digits'),
  }),
  z.strictObject({
    part: z.literal('state').describe('a condition of the instrument'),
    channel: whose,
    at,
    means: states.describe('by hex digits'),
  }),
]);
export type BinaryPart = z.infer<typeof binaryPartSchema>;
export type BinaryNumber = Extract<BinaryPart, { part: 'number' }>;
