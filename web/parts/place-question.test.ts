import { expect, test } from 'vitest';
import { back, feet, sampleSession, sampleTake, walkBack } from '../sample-session.ts';
import { neighbour, takenFrom } from './place-question.tsx';

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

test('a walk is begun again at a place by taking back all that follows it', () => {
  const takes = [0, 1, 2, 3].map((k) => sampleTake(k, k));
  const session = sampleSession(takes);
  expect(takenFrom(session, feet(2))).toEqual([3, 4]);
  expect(takenFrom(session, feet(5))).toEqual([]);
  const voids = takenFrom(session, feet(2))
    .toReversed()
    .map((take) => ({ type: 'void', take, reason: 'repeated from here on' }) as const);
  expect(sampleSession([...takes, ...voids]).next).toEqual(feet(2));
});
