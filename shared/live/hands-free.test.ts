import { expect, test } from 'vitest';
import type { Steadiness } from '../session/events.ts';
import { armed, feel, spent } from './hands-free.ts';

function dues(start: typeof armed, seen: Steadiness[]): number[] {
  let state = start;
  return seen.flatMap((steadiness, k) => {
    const felt = feel(state, steadiness);
    state = felt.due ? spent : felt.state;
    return felt.due ? [k] : [];
  });
}

test('takes once when steady, and not again before a movement was felt', () => {
  const seen: Steadiness[] = [
    'settling',
    'steady',
    'steady',
    'settling',
    'steady',
    'moving',
    'settling',
    'steady',
  ];
  expect(dues(armed, seen)).toEqual([1, 7]);
});

test('does not take where it stands after a take made by hand', () => {
  expect(dues(spent, ['steady', 'settling', 'steady'])).toEqual([]);
});
