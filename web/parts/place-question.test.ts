import { expect, test } from 'vitest';
import { back, feet, sampleSession, walkBack } from '../sample-session.ts';
import { neighbour } from './place-question.tsx';

const both = sampleSession([walkBack]);

test('right is towards the far end on both walks', () => {
  expect(neighbour(both, feet(2), 'ArrowRight')?.at[0]).toBe('F3');
  expect(neighbour(both, feet(2, back), 'ArrowRight')?.at[0]).toBe('F3');
  expect(neighbour(both, feet(2, back), 'ArrowLeft')?.at[0]).toBe('F1');
});

test('up and down change the walk, and no key leaves the way', () => {
  expect(neighbour(both, feet(2), 'ArrowUp')).toEqual(feet(2, back));
  expect(neighbour(sampleSession([]), feet(2), 'ArrowUp')).toBeNull();
  expect(neighbour(both, feet(5), 'ArrowRight')).toBeNull();
  expect(neighbour(both, feet(2), 'Tab')).toBeNull();
});
