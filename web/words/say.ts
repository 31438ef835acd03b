/** Texts of a language by their English originals. */
export type Language = Readonly<Record<string, string>>;

let language: Language = {};

/** Chooses the language of all texts that are said from now on; the page is drawn anew by its caller. */
export function speak(chosen: Language): void {
  language = chosen;
}

/**
 * A text of the page in the language of its reader. Texts are written in English where they are shown, whole sentences
 * with `{name}` where a value goes, never glued from pieces; a text without a translation stays English.
 */
export function say(text: string, values: Readonly<Record<string, string | number>> = {}): string {
  const said = language[text] ?? text;
  return said.replace(/\{(\w+)\}/g, (whole, name: string) => String(values[name] ?? whole));
}
