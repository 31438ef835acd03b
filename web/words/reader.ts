import { type LanguageCode, textsOf } from './languages/languages.ts';
import { measured } from './measured.ts';
import { phrasebook, type Translate } from './phrasebook.ts';
import { asWritten, isPlain, writeNumbersFor } from './quantity.ts';

/** Sentences are English inside, as heights are µm inside; they are put into the reader's language once, at the edge. */

let translate: Translate | null = null;

/** Everything is written in that language from now on; the page is drawn anew by its caller. */
export async function readIn(language: LanguageCode): Promise<void> {
  const texts = await textsOf(language);
  translate = texts && phrasebook(texts);
  writeNumbersFor(language, navigator.languages);
}

/** A text that the page is about to show or to say aloud, in the reader's language, numbers and measure. */
export function written(english: string): string {
  const said = translate ? translate(english) : english;
  return isPlain() ? said : measured(said, asWritten());
}
