import { expect, test } from 'vitest';
import { judge, judgeOneSided } from './verdicts.ts';

test('a signed figure is judged by its size and shown as it is', () => {
  expect(judge(-12, 0.5, 10)).toEqual({ value: -12, U: 1, verdict: 'outside' });
  expect(judge(-8, 0.5, 10).verdict).toBe('within');
});

test('a one-sided limit has no other side', () => {
  expect(judgeOneSided(-12, 0.5, 10).verdict).toBe('within');
});

test('what cannot be told says why, and the cheapest cure', () => {
  const close = judge(9, 1, 10);
  expect(close.verdict).toBe('cannot tell');
  expect(close.reason).toBe(
    'the figure lies 1 µm from the limit and is sure only to 2 µm; 4 times as many passes would make U small enough if the figure stays',
  );
  expect(judge(10, 1, 10).reason).toContain('finer instrument');
});
