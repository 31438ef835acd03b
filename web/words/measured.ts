import type { Writing } from '../../shared/writing.ts';

/** A number with a point or a unit of metal behind it, and not a part of a name, a date or another number. */
const numbers = /(?<![\w.,])(\d+)(?:\.(\d+))?(?: (µm\/m|µm)(?![\w/]))?(?![\w]|[.,]\d)/gu;

/**
 * A sentence with its numbers as the reader has them: the decimal sign, and µm and µm/m in inches where these are wanted.
 * It keeps as fine a last digit as it came with. For sentences that were made elsewhere; where the page has the numbers
 * themselves, it writes them without this detour.
 */
export function measured(sentence: string, writing: Writing): string {
  return sentence.replace(
    numbers,
    (whole, ones: string, decimals: string | undefined, unit: string | undefined) => {
      const value = Number(decimals === undefined ? ones : `${ones}.${decimals}`);
      const digits = decimals?.length ?? 0;
      if (unit && writing.lengthUnit === 'in') return writing.size(value, Math.sqrt(10) / 10 ** digits, unit);
      if (decimals === undefined) return whole;
      return writing.number(value, digits) + (unit ? ` ${unit}` : '');
    },
  );
}
