import { type Writing, writingFor } from '../../shared/writing.ts';
import { type LanguageCode, languageFor } from './languages/languages.ts';

/** Numbers and quantities as the reader of this page has them: their decimal sign, their inches or millimetres. */

let locale = 'en';
let spoken: LanguageCode = 'en';
let lengths: 'mm' | 'in' = 'mm';
let writing = made();
let formats = new Map<string, Intl.NumberFormat>();

function made(): Writing {
  return writingFor(lengths, number);
}

/**
 * Writes numbers from now on as the browser's own locale has them, or as the language of the page does where the
 * reader chose one that the browser did not ask for; the page is drawn anew by its caller.
 */
export function writeNumbersFor(language: LanguageCode, browser: readonly string[]): void {
  const asked = languageFor(browser) === language ? browser[0] : undefined;
  locale = asked ?? language;
  spoken = language;
  formats = new Map();
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
  return formatted(value, decimals, decimals);
}

/** A number without needless zeros, with at most so many decimals. */
export function shortNumber(value: number, most: number): string {
  return formatted(value, 0, most);
}

/** A point or comma between thousands would be taken for the decimal sign of somebody else: where both occur, a gap. */
function formatted(value: number, least: number, most: number): string {
  const key = `${least} ${most}`;
  const format =
    formats.get(key) ??
    new Intl.NumberFormat(locale, {
      minimumFractionDigits: least,
      maximumFractionDigits: most,
      numberingSystem: 'latn',
    });
  formats.set(key, format);
  return format
    .formatToParts(value)
    .map(({ type, value: part }) => (type === 'group' && part === '.' ? '\u202f' : part))
    .join('');
}

/** "25 Nov 2026": no order of figures to be mistaken. */
export function dateText(t: number): string {
  return new Date(t).toLocaleDateString(dates(), { day: 'numeric', month: 'short', year: 'numeric' });
}

/** "14:05". */
export function timeText(t: number): string {
  return new Date(t).toLocaleTimeString(dates(), { hour: '2-digit', minute: '2-digit', hour12: false });
}

/** Dates are words: they are in the language of the page; the day stands first in English too. */
function dates(): string {
  return spoken === 'en' ? 'en-GB' : spoken;
}

/** Whether numbers are written as they are inside: with a point, in µm. */
export function isPlain(): boolean {
  return lengths === 'mm' && number(0.5, 1) === '0.5';
}
