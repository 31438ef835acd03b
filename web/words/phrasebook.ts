/** Texts of a language by their English originals, with `{name}` where a value goes. */
export type Language = Readonly<Record<string, string>>;

/** What is done with a piece of text that no phrase of the language covers: a name, a number, or a gap. */
type Leave = (piece: string) => string;

/** Puts English texts into one language. */
export type Translate = (english: string, leave?: Leave) => string;

interface Phrase {
  readonly pattern: RegExp;
  /** The longest piece of it that is always there. */
  readonly core: string;
  readonly letters: number;
  readonly names: readonly string[];
  readonly said: string;
}

/** A phrase of fewer letters, as "{from} to {to}", fits too much: it is tried when nothing can be taken apart any more. */
const strongFrom = 5;

/** Where a text may be taken apart when it is not known as a whole, the strongest joint first. */
const joints: readonly (readonly [RegExp, string])[] = [
  [/(?<=[.!?]) (?=\p{Lu})/u, ' '],
  [/\n/, '\n'],
  [/ · /, ' · '],
  [/; /, '; '],
  [/: /, ': '],
  [/, /, ', '],
  [/ \(|\)/, ''],
  [/ – /, ' – '],
  [/ or /, ' or '],
  [/ and /, ' and '],
];

/**
 * Sentences are made in English wherever they are made, and known again here by the phrases of the dictionary, values in
 * their places. A value is put into the language too, for it may be a word or a sentence; what no phrase covers is taken
 * apart at its joints, and what is left then stays as it is. A value never runs over the end of a sentence, and one
 * called `count` is a number. Of values side by side, each but the last is one word. The phrase with the most letters of its own wins.
 */
export function phrasebook(texts: Language): Translate {
  const phrases = Object.entries(texts)
    .filter(([english]) => /\{\w+\}/.test(english))
    .map(phraseOf)
    .sort((a, b) => b.letters - a.letters);
  const [strong, weak] = [true, false].map((is) =>
    phrases.filter(({ letters }) => letters >= strongFrom === is),
  );
  const known = (english: string) => (Object.hasOwn(texts, english) ? texts[english]! : null);

  const match = (english: string, leave: Leave, among = strong!): string | null => {
    const whole = known(english);
    if (whole !== null) return whole;
    for (const { pattern, core, names, said } of among) {
      const found = english.includes(core) && pattern.exec(english);
      if (!found) continue;
      const values = new Map(names.map((name, k) => [name, translate(found[k + 1]!, leave)]));
      return said.replace(/\{(\w+)\}/g, (place, name: string) => values.get(name) ?? place);
    }
    return null;
  };
  /** The same where only its first letter, or the dot at its end, is not as in the dictionary. */
  const nearly = (english: string, leave: Leave, among = strong!): string | null => {
    const found = match(english, leave, among);
    if (found !== null) return found;
    const small = english[0]!.toLowerCase() + english.slice(1);
    const begun = small === english ? null : match(small, leave, among);
    if (begun !== null) return begun[0]!.toUpperCase() + begun.slice(1);
    if (!/[^.][.:]$/.test(english)) return null;
    const open = nearly(english.slice(0, -1), leave, among);
    return open === null ? null : open + english.at(-1);
  };
  const apart = (english: string, leave: Leave): string => {
    for (const [joint, glue] of joints) {
      const pieces = english.split(joint);
      if (pieces.length === 1) continue;
      if (glue !== '') return pieces.map((piece) => translate(piece, leave)).join(known(glue) ?? glue);
      const marks = [...(english.match(new RegExp(joint, 'g')) ?? []), ''];
      return pieces.map((piece, k) => translate(piece, leave) + marks[k]).join('');
    }
    return nearly(english, leave, weak!) ?? leave(english);
  };
  const translate = (english: string, leave: Leave = (piece) => piece): string => {
    const bare = english.trim();
    if (!/\p{L}/u.test(bare)) return english;
    const [before, after] = english.split(bare);
    return before + (nearly(bare, leave) ?? apart(bare, leave)) + after;
  };
  return translate;
}

function phraseOf([english, said]: readonly [string, string]): Phrase {
  const pieces = english.split(/\{(\w+)\}/);
  const literal = pieces.filter((_, k) => k % 2 === 0);
  const source = pieces
    .map((piece, k) => (k % 2 === 0 ? escaped(piece) : slot(piece, pieces[k + 1]!, pieces[k + 2])))
    .join('');
  return {
    pattern: new RegExp(`^${source}$`, 'su'),
    core: literal.reduce((a, b) => (b.length > a.length ? b : a)),
    letters: literal.join('').replace(/[^\p{L}]/gu, '').length,
    names: pieces.filter((_, k) => k % 2 === 1),
    said,
  };
}

function slot(name: string, behind: string, next?: string): string {
  if (name === 'count') return '([\\d.,\u202f]+)';
  if (name === 'unit') return '((?:[\\d.,]+ )?\\S+)';
  return behind === ' ' && next !== 'unit' ? '(\\S+)' : '((?:(?![.!?] \\p{Lu}).)+?)';
}

function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&');
}
