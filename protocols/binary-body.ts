import { WayscribeError } from '../shared/errors.ts';
import type { ReadingState } from '../shared/session/events.ts';
import { fromHex, toHex } from './bytes.ts';
import type { BinaryNumber, BinaryPart } from './parts.ts';
import type { Says } from './profile.ts';
import { floatOf, hexOfFloat, hexOfInteger, integerOf } from './registers.ts';
import { type Matched, type Slot, type Speech, spokenBy, textFor } from './slots.ts';

type BinaryBody = Extract<Says, { as: 'bytes' | 'hex' }>;

/** How many half bytes the content of a frame has. */
export function nibblesOf({ as, size }: BinaryBody): number {
  return as === 'hex' ? size : 2 * size;
}

/** The half bytes that a part takes, the most significant first. */
export function nibblePlaces({ at }: BinaryPart): readonly number[] {
  return 'nibbles' in at ? at.nibbles : at.bytes.flatMap((byte) => [2 * byte, 2 * byte + 1]);
}

/** Reads the parts by their places. Every part takes as many steps as it has half bytes. */
export function matchBinary(body: BinaryBody, content: string): Matched {
  if (content.length !== body.size) return { why: `is ${content.length} long, not ${body.size}` };
  if (body.as === 'hex' && !/^[0-9a-fA-F]*$/.test(content)) return { why: 'is not all hex digits' };
  const hex = body.as === 'hex' ? content.toLowerCase() : toHex(content);
  const slots: Slot[] = [];
  for (const part of body.parts) {
    const digits = nibblePlaces(part).reduce((text, place) => text + (hex[place] ?? ''), '');
    switch (part.part) {
      case 'fixed':
        if (digits !== part.hex.toLowerCase()) return { why: `has ${digits} where ${part.hex} must stand` };
        break;
      case 'number': {
        const slot = numberSlot(body, part, digits, hex);
        if ('why' in slot) return slot;
        slots.push(slot);
        break;
      }
      case 'sign':
        if (digits !== part.plus && digits !== part.minus) return { why: `has no sign for ${part.channel}` };
        break;
      case 'decimals':
        if (Number.parseInt(digits, 16) > part.most)
          return { why: `has no place for the point of ${part.channel}` };
        break;
      case 'unit': {
        const unit = part.means[digits];
        if (!Object.hasOwn(part.means, digits) || !unit) return { why: 'names no unit' };
        slots.push({ kind: 'unit', channel: part.channel, unit });
        break;
      }
      case 'state': {
        const state = part.means[digits];
        if (!Object.hasOwn(part.means, digits) || !state) return { why: 'names no state' };
        slots.push({ kind: 'state', channel: part.channel, state });
      }
    }
  }
  return { slots };
}

/** The number with the sign and the point that stand elsewhere in the frame. */
function numberSlot(
  body: BinaryBody,
  part: BinaryNumber,
  digits: string,
  hex: string,
): Slot | { why: string } {
  const { channel } = part;
  if (Object.hasOwn(part.instead, digits)) return { kind: 'instead', channel, state: part.instead[digits]! };
  if (part.is === 'float') {
    const value = floatOf(digits);
    return Number.isFinite(value)
      ? { kind: 'number', channel, text: String(value) }
      : { why: `says no number for ${channel}` };
  }
  const whole = integerOf(part.is, digits);
  if (whole === null) return { why: `has ${digits} for ${channel}, which is not all decimal digits` };
  const { sign, point } = partners(body, channel);
  const minus = sign && placed(sign, hex) === sign.minus ? '-' : '';
  const decimals = point ? Number.parseInt(placed(point, hex), 16) : part.decimals;
  const text = `${minus}${whole}${decimals ? `e-${decimals}` : ''}`;
  return { kind: 'number', channel, text, ...(decimals !== undefined && { decimals }) };
}

/** The inverse of `matchBinary`: half bytes that no part takes are noughts. */
export function writeBinary(body: BinaryBody, speech: Speech): string {
  const hex = Array.from({ length: nibblesOf(body) }, () => '0');
  for (const part of body.parts) {
    const places = nibblePlaces(part);
    const digits = written(body, part, speech, places.length);
    places.forEach((place, k) => {
      hex[place] = digits[k] ?? '0';
    });
  }
  return body.as === 'hex' ? hex.join('').toUpperCase() : fromHex(hex.join(''));
}

function written(body: BinaryBody, part: BinaryPart, speech: Speech, width: number): string {
  if (part.part === 'fixed') return part.hex.toLowerCase();
  const { value, decimals, unit, state } = spokenBy(speech, part.channel);
  switch (part.part) {
    case 'number': {
      const word = textFor<ReadingState>(part.instead, state);
      if (word !== undefined) return word;
      if (part.is === 'float') return hexOfFloat(value, width);
      const { sign, point } = partners(body, part.channel);
      const behind = point ? Math.min(decimals ?? 3, point.most) : (part.decimals ?? 0);
      const size = (sign ? Math.abs(value) : value).toFixed(behind).replace('.', '');
      const digits = hexOfInteger(part.is, BigInt(size), width);
      if (digits !== null) return digits;
      throw new WayscribeError(
        'profile.invalid',
        part.channel,
        `has no room for ${value}`,
        'give it more places',
      );
    }
    case 'sign':
      return value < 0 ? part.minus : part.plus;
    case 'decimals':
      return Math.min(decimals ?? 3, part.most)
        .toString(16)
        .padStart(width, '0');
    case 'unit':
      return textFor(part.means, unit) ?? Object.keys(part.means)[0]!;
    case 'state':
      return textFor(part.means, state) ?? textFor(part.means, 'ok') ?? '';
  }
}

function partners(body: BinaryBody, channel: string) {
  const sign = body.parts.find((part) => part.part === 'sign' && part.channel === channel);
  const point = body.parts.find((part) => part.part === 'decimals' && part.channel === channel);
  return {
    sign: sign?.part === 'sign' ? sign : undefined,
    point: point?.part === 'decimals' ? point : undefined,
  };
}

function placed(part: BinaryPart, hex: string): string {
  return nibblePlaces(part).reduce((text, place) => text + (hex[place] ?? ''), '');
}
