import { expect, test } from 'vitest';
import type { Live } from '../../shared/messages.ts';
import { extendTrace, type TracePoint } from './settle-trace.ts';

function live(m: number, value: number | null): Live {
  return {
    from: 'L',
    m,
    value,
    state: value === null ? 'over-range' : 'ok',
    steadiness: 'settling',
    mean: value,
    spread: 0,
    trend: 0,
    steadyForMs: 0,
    armed: true,
  };
}

const walk = (...points: [number, number | null][]) =>
  points.reduce<readonly TracePoint[]>((trace, [m, value]) => extendTrace(trace, live(m, value)), []);

test('ten seconds are kept', () => {
  expect(walk([0, 1], [4000, 2], [10_000, 3], [10_001, 4]).map(({ m }) => m)).toEqual([4000, 10_000, 10_001]);
});

test('what is no number is no point; a clock that ran back starts anew', () => {
  expect(walk([0, 1], [100, null], [200, 3])).toHaveLength(2);
  expect(walk([5000, 1], [5100, 2], [100, 3])).toEqual([{ m: 100, value: 3 }]);
  expect(walk([0, 1], [60_000, 2])).toEqual([{ m: 60_000, value: 2 }]);
});
