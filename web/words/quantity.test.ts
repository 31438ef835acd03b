import { afterEach, expect, test } from 'vitest';
import { readNumber } from './numbers.ts';
import { asWritten, isPlain, measureIn, number, shortNumber, writeNumbersFor } from './quantity.ts';

afterEach(() => {
  writeNumbersFor('en', ['en']);
  measureIn('mm');
});

test('numbers follow the locale of the browser, also where the page has no such language', () => {
  writeNumbersFor('en', ['fr-FR', 'en']);
  expect(number(9.6, 2)).toBe('9,60');
  writeNumbersFor('de', ['de-CH', 'de']);
  expect(number(9.6, 2)).toBe('9.60');
  writeNumbersFor('de', ['de-DE']);
  expect(number(9.6, 2)).toBe('9,60');
});

test('who chose another language than the browser asked for has its numbers too', () => {
  writeNumbersFor('de', ['en-US', 'en']);
  expect(number(0.5, 1)).toBe('0,5');
  writeNumbersFor('en', ['de']);
  expect(number(0.5, 1)).toBe('0.5');
});

test('thousands are set off by a gap where a point could be taken for the decimal sign', () => {
  writeNumbersFor('de', ['de']);
  expect(shortNumber(1800.25, 2)).toBe('1\u202f800,25');
});

test('what is shown can be typed again, with either sign', () => {
  writeNumbersFor('de', ['de']);
  expect(readNumber(number(0.35, 2))).toBe(0.35);
  expect(readNumber('0.35')).toBe(0.35);
});

test('inches are another measure than the one inside, and so is a comma', () => {
  expect(isPlain()).toBe(true);
  measureIn('in');
  expect(isPlain()).toBe(false);
  expect(asWritten().size(25.4, 0.3)).toBe('0.00100 in');
  measureIn('mm');
  writeNumbersFor('de', ['de']);
  expect(isPlain()).toBe(false);
});
