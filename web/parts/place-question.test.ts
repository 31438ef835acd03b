import { expect, test } from 'vitest';
import { sampleSession } from '../sample-session.ts';
import { neighbour } from './place-question.tsx';

const both = sampleSession([{ type: 'phase', walk: 'back' }]);
const place = { walk: 'out', from: 'F2', to: 'F3' } as const;

test('right is towards the far end on both walks', () => {
  expect(neighbour(both, place, 'ArrowRight')?.from).toBe('F3');
  expect(neighbour(both, { ...place, walk: 'back' }, 'ArrowRight')?.from).toBe('F3');
  expect(neighbour(both, { ...place, walk: 'back' }, 'ArrowLeft')?.from).toBe('F1');
});

test('up and down change the walk, and no key leaves the way', () => {
  expect(neighbour(both, place, 'ArrowUp')?.walk).toBe('back');
  expect(neighbour(sampleSession([]), place, 'ArrowUp')).toBeNull();
  expect(neighbour(both, { walk: 'out', from: 'F5', to: 'F6' }, 'ArrowRight')).toBeNull();
  expect(neighbour(both, place, 'Tab')).toBeNull();
});
