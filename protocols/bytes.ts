import { z } from 'zod';

/**
 * Bytes in a profile are text, one character a byte (U+0000 to U+00FF), or hex after "hex:". Inside the
 * program bytes of a frame are always text, one character a byte.
 */
export const bytesSchema = z
  .string()
  .regex(/^(?:hex:(?: *[0-9a-fA-F]{2})+|(?!hex:)[^\u0100-\uffff]+)$/)
  .max(800)
  .describe('text, one character a byte, or "hex:" and two hex digits a byte, with or without spaces');

/** What the notation of a profile stands for, one character a byte. */
export function bytesOf(notation: string): string {
  return notation.startsWith('hex:') ? fromHex(notation.slice(4).replaceAll(' ', '')) : notation;
}

/** Two lower-case hex digits a byte. */
export function toHex(bytes: string): string {
  let hex = '';
  for (let k = 0; k < bytes.length; k += 1) hex += bytes.charCodeAt(k).toString(16).padStart(2, '0');
  return hex;
}

/** The inverse of `toHex`; a last digit without its partner is left out. */
export function fromHex(hex: string): string {
  let bytes = '';
  for (let k = 0; k + 1 < hex.length; k += 2) {
    bytes += String.fromCharCode(Number.parseInt(hex.slice(k, k + 2), 16));
  }
  return bytes;
}
