import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type ClosureLine, closuresOf } from './closures.ts';

/** Constructed: eight lines of two steps each, over corners (A to D), middles (W, E, S, N) and the centre C. */
const names = {
  'first diagonal': ['A', 'C', 'D'],
  'second diagonal': ['B', 'C', 'G'],
  near: ['A', 'S', 'B'],
  far: ['G', 'N', 'D'],
  left: ['A', 'W', 'G'],
  right: ['B', 'E', 'D'],
  along: ['W', 'C', 'E'],
  across: ['S', 'C', 'N'],
} as const;
type Name = keyof typeof names;

function line(name: Name, excessUm: readonly number[] = [0, 0]): ClosureLine {
  return { name, stations: names[name], excessUm, stepUUm: 0.1 };
}
const all = Object.keys(names) as Name[];
const lines = (upTo: number, excess: Partial<Record<Name, number[]>> = {}) =>
  all.slice(0, upTo).map((name) => line(name, excess[name]));
const at = (station: string, closures: ReturnType<typeof closuresOf>) =>
  closures.find((closure) => closure.station === station);

describe('what is still open', () => {
  test('two diagonals cross but cannot fail to; one loop is taken up by the common zero', () => {
    expect(closuresOf(lines(2), 'shared')).toEqual([]);
    expect(closuresOf(lines(3), 'shared')).toEqual([]);
  });

  test('the second loop closes at the corners and the middle, not at stations that one line alone reaches', () => {
    const closures = closuresOf(lines(4), 'shared');
    expect(closures.map(({ station }) => station).sort()).toEqual(['A', 'B', 'C', 'D', 'G']);
  });

  test('with a zero for each line only the two centre lines close', () => {
    expect(closuresOf(lines(6), 'free')).toEqual([]);
    expect(closuresOf(lines(7), 'free').length).toBeGreaterThan(0);
  });
});

test('lines that agree close with nothing', () => {
  for (const { closureUm } of closuresOf(lines(8), 'shared')) expect(closureUm).toBe(0);
  expect(closuresOf(lines(8), 'shared')).toHaveLength(9);
});

test('a step that is read too high opens the crossings of its line', () => {
  const closures = closuresOf(lines(8, { along: [0, 3] }), 'shared');
  // Slid to lie best: −1, −1, +2 over the others, which bring 0.
  expect(at('W', closures)?.closureUm).toBeCloseTo(1, 12);
  expect(at('C', closures)?.closureUm).toBeCloseTo(1, 12);
  expect(at('E', closures)?.closureUm).toBeCloseTo(2, 12);
  expect(at('A', closures)?.closureUm).toBe(0);
  expect(at('E', closures)?.lines).toEqual(['right', 'along']);
});

test('a line with a zero of its own is tilted too: only its bend shows', () => {
  const closures = closuresOf(lines(8, { along: [2, 2], across: [0, 3] }), 'free');
  expect(at('W', closures)?.closureUm).toBeCloseTo(0, 12);
  // 0, 0, 3 laid best on a slope: +0.5, −1, +0.5.
  expect(at('S', closures)?.closureUm).toBeCloseTo(0.5, 12);
  expect(at('C', closures)?.closureUm).toBeCloseTo(1, 12);
});

test('the level alone makes a running sum uncertain as in its middle', () => {
  const [closure] = closuresOf(lines(8), 'shared');
  expect(closure?.uUm).toBeCloseTo(Math.SQRT2 * 0.1 * (Math.SQRT2 / 2), 12);
});

test('no closure is negative, and the order of the lines does not matter', () => {
  const excess = fc.array(fc.double({ min: -5, max: 5, noNaN: true }), { minLength: 16, maxLength: 16 });
  fc.assert(
    fc.property(excess, fc.constantFrom('shared' as const, 'free' as const), (e, zero) => {
      const walked = all.map((name, k) => line(name, e.slice(2 * k, 2 * k + 2)));
      const there = closuresOf(walked, zero);
      const back = closuresOf(walked.toReversed(), zero);
      for (const { station, closureUm } of there) {
        expect(closureUm).toBeGreaterThanOrEqual(0);
        expect(at(station, back)?.closureUm).toBeCloseTo(closureUm, 9);
      }
    }),
  );
});
