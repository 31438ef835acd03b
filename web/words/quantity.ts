import { type Writing, writingFor } from '../../shared/writing.ts';

/** Numbers and quantities as the reader of this page has them: their decimal sign, their inches or millimetres. */

let locale = 'en';
let lengths: 'mm' | 'in' = 'mm';
let writing = made();

function made(): Writing {
  return writingFor(lengths, number);
}

/** Writes numbers from now on as people of that language do; the page is drawn anew by its caller. */
export function writeNumbersLike(language: string): void {
  locale = language;
}

/** Writes heights and slopes from now on for who chose that unit of length; the page is drawn anew by its caller. */
export function measureIn(unit: 'mm' | 'in'): void {
  if (unit === lengths) return;
  lengths = unit;
  writing = made();
}

/** How quantities are written now, for sentences that are made elsewhere. */
export function asWritten(): Writing {
  return writing;
}

/** A number with exactly so many decimals. */
export function number(value: number, decimals: number): string {
  return value.toLocaleString(locale, { minimumFractionDigits: decimals, maximumFractionDigits: decimals });
}

/** A number without needless zeros, with at most so many decimals. */
export function shortNumber(value: number, most: number): string {
  return value.toLocaleString(locale, { maximumFractionDigits: most });
}
