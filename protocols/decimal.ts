import { WayscribeError } from '../shared/errors.ts';
import type { TextNumber } from './parts.ts';

/** A decimal number found in a text: how it reads, and where it ends. */
export interface FoundDecimal {
  readonly text: string;
  readonly decimals?: number;
  readonly end: number;
}

// Sticky, and without a choice that could be taken back: linear.
const mantissa = { '.': /([+-]?) *(\d*)(\.\d*)?/y, ',': /([+-]?) *(\d*)(,\d*)?/y };
const exponent = /[eE][+-]?\d{1,3}/y;

/** The number at `start`, or why there is none. */
export function findDecimal(part: TextNumber, text: string, start: number): FoundDecimal | { why: string } {
  const pattern = mantissa[part.point];
  pattern.lastIndex = start;
  const [all = '', sign = '', whole = '', tail = ''] = pattern.exec(text) ?? [];
  const fraction = tail.slice(1);
  const digits = whole.length + fraction.length;
  // Without digits before the point it is whole only when those behind it are counted.
  if (digits === 0 || (whole === '' && !part.decimals)) return { why: `says no number for ${part.channel}` };
  if (part.sign === 'always' && !sign) return { why: `has no sign before ${part.channel}` };
  if (part.sign === 'never' && sign) return { why: `has a sign before ${part.channel}` };
  const [fewest, most] = part.digits;
  if (digits < fewest || digits > most) {
    return { why: `has ${digits} digits for ${part.channel}, not ${fewest} to ${most}` };
  }
  if (part.decimals !== undefined && fraction.length !== part.decimals) {
    return { why: `has not ${part.decimals} digits behind the point of ${part.channel}` };
  }
  const end = start + all.length;
  const read = `${sign === '-' ? '-' : ''}${whole || '0'}.${fraction}`;
  if (!part.exponent) return { text: read, decimals: fraction.length, end };
  exponent.lastIndex = end;
  const power = exponent.exec(text)?.[0];
  return power === undefined
    ? { why: `has no exponent behind ${part.channel}` }
    : { text: read + power, end: end + power.length };
}

/**
 * The number as the part writes it, with noughts in front up to its fewest digits.
 * @throws WayscribeError `profile.invalid` when it has no room for it
 */
export function writeDecimal(part: TextNumber, value: number, decimals: number | undefined): string {
  const [fewest, most] = part.digits;
  const size = Math.abs(value);
  const sign = value < 0 ? '-' : part.sign === 'always' ? '+' : '';
  if (value < 0 && part.sign === 'never') throw unsaid(part, value);
  if (part.exponent) {
    const [head = '', power = '0'] = size.toExponential(part.decimals ?? Math.min(8, most - 1)).split('e');
    const tens = Math.abs(Number(power)).toString().padStart(2, '0');
    return `${sign}${head.replace('.', part.point)}E${Number(power) < 0 ? '-' : '+'}${tens}`;
  }
  const wholeDigits = Math.trunc(size).toString().length;
  const behind = part.decimals ?? Math.min(decimals ?? 3, Math.max(0, most - wholeDigits));
  const [whole = '', fraction = ''] = size.toFixed(behind).split('.');
  const padded = whole.padStart(fewest - fraction.length, '0');
  if (padded.length + fraction.length > most) throw unsaid(part, value);
  return sign + padded + (behind > 0 ? part.point + fraction : '');
}

function unsaid(part: TextNumber, value: number): WayscribeError {
  return new WayscribeError(
    'profile.invalid',
    part.channel,
    `has no room for ${value}`,
    'give it more digits',
  );
}
