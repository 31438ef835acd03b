import { WayscribeError } from '../errors.ts';

/** A signed decimal as people write it: point or comma, the sign before or behind, no thousands. */
const decimal = /^([+\-−–])?\s*(\d{1,9}(?:[.,]\d{0,9})?|[.,]\d{1,9})\s*([+\-−–])?$/;

/**
 * The number in a typed reading. "12,5", "12.5-" and "− 12.5" are understood; whatever the language of
 * the computer, a comma is a decimal comma.
 * @throws WayscribeError `command.invalid` when it is not one number
 */
export function parseTyped(text: string): number {
  const match = decimal.exec(text.trim());
  if (!match || (match[1] && match[3])) {
    throw new WayscribeError(
      'command.invalid',
      'reading',
      text.trim() === '' ? 'nothing was typed' : `"${text.trim()}" is not one number`,
      'type it like 12.5 or -3 or 4,5-',
    );
  }
  const size = Number(match[2]!.replace(',', '.'));
  const sign = match[1] ?? match[3];
  return sign && sign !== '+' && size !== 0 ? -size : size;
}
