import { expect, test } from 'vitest';
import { expectClose } from '../../tests/tools/expect-close.ts';
import { handColumns, type WalkStep } from './hand-columns.ts';

const walk = (readings: (number | null)[]): WalkStep[] =>
  readings.map((readingUmPerM, k) => ({ from: `F${k}`, to: `F${k + 1}`, readingUmPerM, baseMm: 200 }));

test('a finished walk ends on its end line', () => {
  const { rows, complete, first } = handColumns(walk([10, -5, 20]));
  expect(complete).toBe(true);
  expect(first).toBe('F0');
  expect(rows.map((row) => row.riseUm)).toEqual([2, -1, 4]);
  expect(rows.map((row) => row.sumUm)).toEqual([2, 1, 5]);
  expect(rows.at(-1)!.heightUm).toBe(0);
  expect(rows[0]!.heightUm).toBeCloseTo(2 - 5 / 3, 12);
});

test('a walk in progress is shown as far as it goes', () => {
  const { rows, complete } = handColumns(walk([10, -5, null, 7]));
  expect(complete).toBe(false);
  expect(rows.map((row) => row.to)).toEqual(['F1', 'F2']);
  expect(rows.at(-1)!.heightUm).toBe(0);
});

test('an unbroken chain is needed: the columns stop at a jump', () => {
  const steps = walk([10, 10, 10]);
  expect(handColumns([steps[0]!, steps[2]!]).rows).toHaveLength(1);
  expect(handColumns([steps[0]!, steps[2]!]).complete).toBe(false);
});

test('a constant on every reading changes no height; a level turned end for end counts the other way', () => {
  const plain = handColumns(walk([10, -5, 20])).rows.map((row) => row.heightUm);
  const shifted = handColumns(walk([110, 95, 120])).rows.map((row) => row.heightUm);
  const turned = handColumns(walk([-10, 5, -20]), -1).rows.map((row) => row.heightUm);
  expectClose(shifted, plain, 12);
  expect(turned).toEqual(plain);
});

test('nothing read yet: no rows', () => {
  expect(handColumns([])).toEqual({ first: '', rows: [], complete: false });
  expect(handColumns(walk([null])).rows).toEqual([]);
});
