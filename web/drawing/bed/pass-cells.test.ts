import { expect, test } from 'vitest';
import { passCells } from './pass-cells.ts';

const stations = ['F0', 'F1', 'F2', 'F3'].map((name, k) => ({ name, xMm: 100 * k }));
const removal = (removeUm: number, passes: number, worthAStroke: boolean) => ({
  removeUm,
  uUm: 1,
  passes,
  worthAStroke,
});

test('each station says how many passes, and leaves what is only uncertainty', () => {
  const cells = passCells(stations, {
    F3: removal(11, 3, true),
    F0: removal(0, 0, false),
    F1: removal(1.4, 1, false),
    F2: removal(4, 1, true),
  });
  expect(cells.map(({ name, words, short, hatched }) => [name, words, short, hatched])).toEqual([
    ['F0', 'leave', '0', false],
    ['F1', 'leave', '0', true],
    ['F2', '1 pass', '1', false],
    ['F3', '3 passes', '3', false],
  ]);
});

test('a station that nothing is known of has no cell', () => {
  expect(passCells(stations, { F2: removal(4, 1, true) }).map(({ name }) => name)).toEqual(['F2']);
});
