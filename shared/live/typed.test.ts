import { expect, test } from 'vitest';
import { parseTyped } from './typed.ts';

test.each([
  ['12.5', 12.5],
  ['12,5', 12.5],
  [' -3 ', -3],
  ['− 3', -3],
  ['12.5-', -12.5],
  ['+0,4', 0.4],
  [',5', 0.5],
  ['7.', 7],
  ['-0', 0],
])('%j is %d', (text, value) => {
  expect(parseTyped(text)).toBe(value);
});

test.each(['', '  ', '1.2.3', '1,234.5', '12a', '--3', '-3-', '1e5', 'NaN', 'Infinity', '12 5', '0x1F'])(
  '%j is refused with an example of what would be right',
  (text) => {
    expect(() => parseTyped(text)).toThrow(/reading: .*; type it like 12.5 or -3 or 4,5-/);
  },
);
