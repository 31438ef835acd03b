import type { Random } from '../tools/random.ts';

/** What is put in the place of a value: borders of numbers, other types, names that mean something to JavaScript. */
const strange = [
  ...['null', 'true', '{}', '[]', '""', '0', '-0', '-1', '1e308', '-1e308', '5e-324', '1e999', '1e21'],
  ...['9007199254740993', '0.1', 'NaN', '"\\u0000"', '"\\ud800"', '"__proto__"', '"constructor"'],
  ...['{"__proto__":{"a":1}}', '[[[[[[]]]]]]', '"../../etc/passwd"', '"1e400"', '"٣"'],
];
const value = /"(?:[^"\\]|\\.)*"|-?\d+(?:\.\d+)?(?:e[+-]?\d+)?|true|false|null/g;

type Mutation = (text: string, numbers: Random) => string;

const pick = <T>(list: readonly T[], numbers: Random): T => list[numbers.below(list.length)]!;
const at = (text: string, numbers: Random) => numbers.below(text.length + 1);
const replaced = (text: string, from: number, to: number, by: string) =>
  text.slice(0, from) + by + text.slice(to);

/** Bytes are damaged, pieces are lost, doubled, moved, and values become others. */
const mutations: readonly Mutation[] = [
  function damagedByte(text, numbers) {
    const k = at(text, numbers);
    return replaced(text, k, k + 1, String.fromCharCode(numbers.below(256)));
  },
  function lostPiece(text, numbers) {
    const k = at(text, numbers);
    return replaced(text, k, k + 1 + numbers.below(60), '');
  },
  function doubledPiece(text, numbers) {
    const k = at(text, numbers);
    return replaced(text, k, k, text.slice(k, k + 1 + numbers.below(200)));
  },
  (text, numbers) => text.slice(0, at(text, numbers)),
  function movedLine(text, numbers) {
    const lines = text.split('\n');
    const [line = ''] = lines.splice(numbers.below(lines.length), 1);
    lines.splice(numbers.below(lines.length + 1), numbers.below(2), line);
    return lines.join('\n');
  },
  otherValue,
  otherValue,
  otherValue,
  function exchangedValues(text, numbers) {
    const values = [...text.matchAll(value)];
    if (values.length === 0) return text;
    const [one, other] = [pick(values, numbers), pick(values, numbers)];
    return replaced(text, one.index, one.index + one[0].length, other[0]);
  },
  function longValue(text, numbers) {
    const k = at(text, numbers);
    const piece = pick(['9', '[', '{"a":', '"', ' ', 'a', '\n', '\u00e9', '%2e'], numbers);
    return replaced(text, k, k, piece.repeat(1 + numbers.below(3000)));
  },
];

function otherValue(text: string, numbers: Random): string {
  const values = [...text.matchAll(value)];
  if (values.length === 0) return text;
  const { index, 0: old } = pick(values, numbers);
  return replaced(text, index, index + old.length, pick(strange, numbers));
}

/** A text with one to `most` things done to it; one character a byte. */
export function mutated(text: string, numbers: Random, most = 3): string {
  let after = text;
  for (let k = 1 + numbers.below(most); k > 0; k -= 1) after = pick(mutations, numbers)(after, numbers);
  return after;
}
