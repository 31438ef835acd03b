import { type LanguageCode, textsOf } from './languages/languages.ts';
import { measured } from './measured.ts';
import { phrasebook, type Translate } from './phrasebook.ts';
import { asWritten, isPlain, writeNumbersFor } from './quantity.ts';

/** Sentences are English inside, as heights are µm inside; they are put into the reader's language once, at the edge. */

let translate: Translate | null = null;
/** What was put into the language already: the page draws the same texts over and over. */
let known = new Map<string, string>();
const mostKnown = 5000;

/** Everything is written in that language from now on; the page is drawn anew by its caller. */
export async function readIn(language: LanguageCode): Promise<void> {
  const texts = await textsOf(language);
  translate = texts && phrasebook(texts);
  known = new Map();
  writeNumbersFor(language, navigator.languages);
}

/** A text that the page is about to show or to say aloud, in the reader's language, numbers and measure. */
export function written(english: string): string {
  const said = inLanguage(english);
  return isPlain() ? said : measured(said, asWritten());
}

function inLanguage(english: string): string {
  if (!translate) return english;
  const said = known.get(english) ?? translate(english);
  if (known.size >= mostKnown) known.clear();
  known.set(english, said);
  return said;
}
