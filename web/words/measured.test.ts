import { expect, test } from 'vitest';
import { writingFor } from '../../shared/writing.ts';
import { measured } from './measured.ts';

const comma = writingFor('mm', (value, decimals) => value.toFixed(decimals).replace('.', ','));
const inch = writingFor('in', (value, decimals) => value.toFixed(decimals));

test.each([
  ['F4 stands 9.6 µm LOW', 'F4 stands 9,6 µm LOW'],
  ['40 µm/m, 2.5 times, s0 = 1.04.', '40 µm/m, 2,5 times, s0 = 1,04.'],
  ['1,800 mm on F1.5 by B89.3.7 in v1.2.3', '1,800 mm on F1.5 by B89.3.7 in v1.2.3'],
  ['9,6 µm', '9,6 µm'],
])('%j with a comma is %j', (plain, written) => {
  expect(measured(plain, comma)).toBe(written);
});

// 1 in = 25.4 mm by definition (international yard and pound agreement, 1959); 0.0005 in/ft = 41.67 µm/m.
test.each([
  ['F4 stands 9.6 µm LOW', 'F4 stands 0.00038 in LOW'],
  ['25.40 µm of bow', '0.001000 in of bow'],
  ['leans 41.7 µm/m', 'leans 0.000500 in/ft'],
  ['leans 42 µm/m', 'leans 0.00050 in/ft'],
  ['over 300 mm, 2.5 times', 'over 11.8 in, 2.5 times'],
  ['7620 mm less 12.7000 mm', '300 in less 0.50000 in'],
  ['1 µm was assumed', '0.000039 in was assumed'],
  ['0.00038 in', '0.00038 in'],
])('%j in inches is %j', (plain, written) => {
  expect(measured(plain, inch)).toBe(written);
});
