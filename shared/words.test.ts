import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { LineFigures } from './figures/line-figures.ts';
import {
  amount,
  amountSureTo,
  decimalsFor,
  expanded,
  lineSentence,
  stationSentence,
  sureTo,
} from './words.ts';

test.each([
  [0.6, 1],
  [0.06, 2],
  [3, 0],
  [1, 0],
  [0.1, 1],
  [1e-7, 3],
  [0, 1],
])('digits follow the uncertainty: %d gives %d decimals', (u, decimals) => {
  expect(decimalsFor(u)).toBe(decimals);
});

test('a size never carries a sign', () => {
  expect(amount(-9.63, 0.4)).toBe('9.6');
  expect(amountSureTo(-9.63, 0.42)).toBe('9.6 µm, sure to 0.8 µm');
});

test('nobody is ever sure to nought', () => {
  expect(sureTo(0)).toBe('how sure is not known');
  expect(expanded(0)).toBeNull();
  expect(sureTo(1e-7)).toBe('sure to 0.001 µm');
  expect(sureTo(0.0007)).toBe('sure to 0.002 µm');
  fc.assert(
    fc.property(fc.double({ min: 1e-15, max: 1e9, noNaN: true }), (u) => {
      const shown = Number(expanded(u));
      expect(shown).toBeGreaterThan(0);
      expect(shown).toBeGreaterThanOrEqual(2 * u * 0.75);
    }),
  );
});

test('stations stand HIGH, LOW or level', () => {
  expect(stationSentence('F4', -9.63, 0.4)).toBe('F4 stands 9.6 µm LOW');
  expect(stationSentence('F4', 9.63, 3)).toBe('F4 stands 10 µm HIGH');
  expect(stationSentence('F4', -0.04, 0.4)).toBe('F4 stands level, sure to 0.8 µm');
});

test('lines in one sentence', () => {
  const straightness = { valueUm: 8.12, uUm: 0.5, highest: 'F0', lowest: 'F6' };
  const line = (shape: LineFigures['shape']): LineFigures => ({
    shape,
    straightness: { ends: straightness, leastSquares: straightness, minimumZone: straightness },
    stations: Object.fromEntries(['F0', 'F3', 'F6'].map((name) => [name, { heightUm: 0, uUm: 0.5 }])),
  });
  expect(lineSentence('Front way', line('hollow'), 'ends')).toBe(
    'Front way 8.1 µm out of straight: hollow, F6 lowest',
  );
  expect(lineSentence('Front way', line('crown'), 'ends')).toBe(
    'Front way 8.1 µm out of straight: crown, F0 highest',
  );
  expect(lineSentence('Front way', line('s-shaped'), 'ends')).toBe(
    'Front way 8.1 µm out of straight: s-shaped, F0 highest, F6 lowest',
  );
  expect(lineSentence('Front way', line('straight'), 'ends')).toBe('Front way straight, sure to 1.0 µm');
});
