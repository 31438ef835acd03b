import fc from 'fast-check';
import { expect, test } from 'vitest';
import { phrasebook } from './phrasebook.ts';

const german = phrasebook({
  Left: 'Links',
  'front way': 'vordere Führungsbahn',
  'far foot HIGH': 'ferner Fuß HOCH',
  more: 'mehr',
  ' and ': ' und ',
  'It is {name}': 'Es ist {name}',
  '{count} passes': '{count} Durchgänge',
  '{place} reads {size} {unit} {side} than before': '{place} zeigt {size} {unit} {side} als vorher',
  'going out': 'hinaus',
  'sure to {size}': 'sicher auf {size}',
  'Wipe it.': 'Abwischen.',
  'Read {place} again, {why}.': '{place} noch einmal lesen: {why}.',
});

test.each([
  ['Left', 'Links'],
  ['  Left ', '  Links '],
  ['Front way', 'Vordere Führungsbahn'],
  ['It is front way', 'Es ist vordere Führungsbahn'],
  ['F3 – F4 reads 2.1 µm more than before', 'F3 – F4 zeigt 2.1 µm mehr als vorher'],
  ['Front way, going out: sure to 0.8 µm', 'Vordere Führungsbahn, hinaus: sicher auf 0.8 µm'],
  ['Front way (going out)', 'Vordere Führungsbahn (hinaus)'],
  ['3 passes', '3 Durchgänge'],
  ['Smith passes', 'Smith passes'],
  ['It is F4. Wipe it.', 'Es ist F4. Abwischen.'],
  ['Read F4 again, going out.', 'F4 noch einmal lesen: hinaus.'],
  ['front way and F2', 'vordere Führungsbahn und F2'],
  ['12.5 µm', '12.5 µm'],
  ['', ''],
])('%j is said %j', (english, said) => {
  expect(german(english)).toBe(said);
});

test('a value runs over no end of a sentence', () => {
  expect(german('It is so. It is F4')).toBe('Es ist so. Es ist F4');
});

test('what is left as it was is told', () => {
  const left: string[] = [];
  german('Front way, as Smith says: 3 passes', (piece) => {
    left.push(piece);
    return piece;
  });
  expect(left).toEqual(['as Smith says']);
});

test('whatever is read, nothing is lost and nothing fails', () => {
  const odd = fc.array(
    fc.constantFrom(
      'It is ',
      'front way',
      ', ',
      '. ',
      ' (',
      ')',
      ' and ',
      '$1',
      '\\',
      '{name}',
      ' 3',
      'passes',
      ': ',
    ),
  );
  fc.assert(
    fc.property(odd, (pieces) => {
      const english = pieces.join('');
      const digits = (text: string) => text.replace(/[^3$\\]/g, '');
      expect(digits(german(english))).toBe(digits(english));
    }),
  );
});
