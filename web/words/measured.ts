import type { Writing } from '../../shared/writing.ts';

/** A number with a point or a unit behind it, and not a part of a name, a date or another number. */
const numbers = /(?<![\w.,])(\d+)(?:\.(\d+))?(?: (µm\/m|µm|mm)(?![\w/]))?(?![\w]|[.,]\d)/gu;

/**
 * A sentence with its numbers as the reader has them: the decimal sign, and µm, µm/m and mm in inches where these are
 * wanted. It keeps as fine a last digit as it came with, and two digits at least. For sentences that were made elsewhere;
 * where the page has the numbers themselves, it writes them without this detour.
 */
export function measured(sentence: string, writing: Writing): string {
  return sentence.replace(
    numbers,
    (whole, ones: string, decimals: string | undefined, unit: string | undefined) => {
      const value = Number(decimals === undefined ? ones : `${ones}.${decimals}`);
      const digits = decimals?.length ?? 0;
      if (unit && writing.lengthUnit === 'in') return inInches(value, digits, unit, writing);
      if (decimals === undefined) return whole;
      return writing.number(value, digits) + (unit ? ` ${unit}` : '');
    },
  );
}

function inInches(value: number, digits: number, unit: string, writing: Writing): string {
  if (unit !== 'mm') {
    const lastDigit = Math.sqrt(10) / 10 ** digits;
    return writing.size(value, value > 0 ? Math.min(lastDigit, value / 20) : lastDigit, unit);
  }
  const inches = value / 25.4;
  const shown = Number(inches.toFixed(digits + 1));
  return `${writing.number(shown, Number.isInteger(shown) ? 0 : digits + 1)} in`;
}
