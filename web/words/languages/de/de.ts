import type { Language } from '../../phrasebook.ts';
import { page } from './page.ts';
import { proving } from './proving.ts';
import { setup } from './setup.ts';

/**
 * German, in files by where a text is met. The English text is the key. The words of the trade (Schaben, Führungsbahn,
 * Wasserwaage, Messuhr, Umschlag, Windschiefe, Tuschieren) are common practice, no source.
 */
export const de: Language = { ...page, ...setup, ...proving };
