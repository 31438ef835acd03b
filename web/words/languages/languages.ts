import type { Language } from '../phrasebook.ts';

/** Every language of the page by what it calls itself. Another one is a folder beside `de/`, named here and below. */
export const languageNames = { en: 'English', de: 'Deutsch' } as const;
export type LanguageCode = keyof typeof languageNames;
export const languageCodes = Object.keys(languageNames) as [LanguageCode, ...LanguageCode[]];

/** Loads the texts of a language; null for English, in which all texts are written. */
export async function textsOf(language: LanguageCode): Promise<Language | null> {
  return language === 'en' ? null : (await import('./de/de.ts')).de;
}

/** The first language of a browser's list that the page speaks. */
export function languageFor(wanted: readonly string[]): LanguageCode {
  const roots = wanted.map((tag) => tag.toLowerCase().split('-')[0]);
  return roots.flatMap((root) => languageCodes.find((code) => code === root) ?? [])[0] ?? 'en';
}

/** The one after it, round and round. */
export function nextLanguage(language: LanguageCode): LanguageCode {
  return languageCodes[(languageCodes.indexOf(language) + 1) % languageCodes.length]!;
}
