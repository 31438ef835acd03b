import { expect, test } from 'vitest';
import { encode } from './encode.ts';
import { hintFor } from './hint.ts';
import { findProfile } from './shipped.ts';

/** Bits of a line on which `text` was sent: low start bit, eight data bits from the lowest, high stop bit. */
function lineOf(text: string): boolean[] {
  return [...text].flatMap((character) => {
    const code = character.charCodeAt(0);
    return [false, ...Array.from({ length: 8 }, (_, bit) => ((code >> bit) & 1) === 1), true];
  });
}

/** What a receiver makes of that line when it is set `factor` times as fast as the sender. */
function heardAt(factor: number, text: string): string {
  const line = lineOf(text);
  const level = (bits: number) => line[Math.floor(bits)] ?? true;
  let heard = '';
  let at = 0;
  while (at < line.length) {
    if (level(at)) {
      at += 1 / 16;
      continue;
    }
    let code = 0;
    for (let bit = 0; bit < 8; bit += 1) if (level(at + (bit + 1.5) / factor)) code |= 1 << bit;
    heard += String.fromCharCode(code);
    at += 9.5 / factor;
  }
  return heard;
}

const speech = Array.from({ length: 40 }, (_, k) =>
  encode(findProfile('line-decimal'), [{ channel: 'tilt', value: 3.7 * k - 61.3, state: 'ok', decimals: 1 }]),
).join('');

test('the receiver of the test hears what was sent when the speeds are equal', () => {
  expect(heardAt(1, speech)).toBe(speech);
});

test.each([2, 4, 8])('a line set %d times too fast is told', (factor) => {
  expect(hintFor(heardAt(factor, speech))).toContain('stretched');
});

test.each([0.5, 0.25])('a line set too slow, %d of the speed, is told', (factor) => {
  expect(hintFor(heardAt(factor, speech))).toContain('Try a higher speed');
});

test.each([
  ['even', 0],
  ['odd', 1],
])('%s parity in the place of the eighth bit is told', (name, wanted) => {
  const sent = [...speech].map((character) => {
    const code = character.charCodeAt(0);
    const ones = code.toString(2).replaceAll('0', '').length;
    return String.fromCharCode(ones % 2 === wanted ? code : code | 0x80);
  });
  expect(hintFor(sent.join(''))).toContain(`7 data bits and ${name} parity`);
});

test.each([
  ['', 'Nothing comes'],
  ['.5\r\nA 12;5\r\nA 12;6\r\n', 'end with CR LF come, and no profile knows what stands in them: "A 12;5"'],
  ['.5\nA 12;5\nA', 'end with LF come'],
  ['A12A13A14', 'without line ends'],
])('%j: %s', (bytes, hint) => {
  expect(hintFor(bytes)).toContain(hint);
});
