import { afterEach, expect, test } from 'vitest';
import { say, speak } from './say.ts';

afterEach(() => speak({}));

test('a text is said in the language chosen, with its values in their places', () => {
  expect(say('Station {n} of {all}', { n: 3, all: 9 })).toBe('Station 3 of 9');
  speak({ 'Station {n} of {all}': 'Von {all} die {n}.' });
  expect(say('Station {n} of {all}', { n: 3, all: 9 })).toBe('Von 9 die 3.');
  expect(say('Not translated')).toBe('Not translated');
  expect(say('{missing} stays')).toBe('{missing} stays');
});
