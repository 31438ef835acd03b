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

const sentenceEnd = /(?<=[.!?]) (?=[\p{Lu}\d])/u;

/** Where a text may be taken apart when it is not known as a whole, the strongest joint first. */
const joints: readonly (readonly [RegExp, string])[] = [
  [/\n/, '\n'],
  [/, then /, ', then '],
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
    .sort((a, b) => b.letters - a.letters || b.names.length - a.names.length);
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
    const quoted = /^"([^"]+)"$/.exec(english);
    if (quoted) return `„${translate(quoted[1]!, leave)}“`;
    const sentences = english.split(sentenceEnd);
    if (sentences.length > 1) return inRuns(sentences, leave).join(' ');
    for (const [joint, glue] of joints) {
      const pieces = english.split(joint);
      if (pieces.length === 1) continue;
      if (glue !== '') return pieces.map((piece) => translate(piece, leave)).join(known(glue) ?? glue);
      const marks = [...(english.match(new RegExp(joint, 'g')) ?? []), ''];
      return pieces.map((piece, k) => translate(piece, leave) + marks[k]).join('');
    }
    return nearly(english, leave, weak!) ?? leave(english);
  };
  /** Sentences that are known together stay together. */
  const inRuns = (sentences: readonly string[], leave: Leave): string[] => {
    if (sentences.length === 0) return [];
    for (let end = sentences.length; end > 1; end--) {
      const run = nearly(sentences.slice(0, end).join(' '), leave);
      if (run !== null) return [run, ...inRuns(sentences.slice(end), leave)];
    }
    return [translate(sentences[0]!, leave), ...inRuns(sentences.slice(1), leave)];
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
    .map((piece, k) =>
      k % 2 === 0
        ? escaped(piece)
        : slot(piece, pieces[k + 1]!, pieces[k + 2], k > 1 && pieces[k - 1] === ' '),
    )
    .join('');
  return {
    pattern: new RegExp(`^${source}$`, 'su'),
    core: literal.reduce((a, b) => (b.length > a.length ? b : a)),
    letters: literal.join('').replace(/[^\p{L}]/gu, '').length,
    names: pieces.filter((_, k) => k % 2 === 1),
    said,
  };
}

/** What the values of some names look like; others are any text within a sentence. */
const classes: Readonly<Record<string, string>> = {
  count: '[\\d.,\u202f]+',
  unit: '(?:[\\d.,]+ )?\\S+',
  day: '[\\d-]+',
  from: '\\S+',
  to: '\\S+',
  line: '[^,.:;]+?',
  text: '.+',
  thing: '(?:(?! and )[^,.:;])+?',
};
const number = '[\\d.,\u202f]+(?: \\S+)?';
const withinSentence = '(?![,;: ])(?:(?![.!?] \\p{Lu}).)+?(?<![,;: ])';

function slot(name: string, behind: string, next: string | undefined, follows: boolean): string {
  if (classes[name]) return `(${classes[name]})`;
  if (name === 'size' && follows) return `(${number})`;
  const single = behind === ' ' && next !== 'unit' && next !== 'size';
  return single ? '(\\S+)' : `(${withinSentence})`;
}

function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&');
}
