import { expect, test } from 'vitest';
import { say } from './say.ts';

test('values stand where the sentence has their names; what has no value stays to be seen', () => {
  expect(say('{name} is back after {time}', { name: 'L2', time: '3 s' })).toBe('L2 is back after 3 s');
  expect(say('{count} of {all}', { count: 0 })).toBe('0 of {all}');
});
