/** Marks a text that stands in a table, to be said where it is shown; so that it is found and translated too. */
export function text<T extends string>(english: T): T {
  return english;
}

/**
 * A text of the page: a whole English sentence with `{name}` where a value goes, never glued from pieces. It is put into
 * the reader's language where it reaches the page (`reader.ts`).
 */
export function say(text: string, values: Readonly<Record<string, string | number>> = {}): string {
  return text.replace(/\{(\w+)\}/g, (whole, name: string) => String(values[name] ?? whole));
}
