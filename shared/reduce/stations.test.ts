import { expect, test } from 'vitest';
import { reduce } from '../reduce.ts';
import { validateSheet } from '../sheet/sheet.ts';

/** Constructed: a field of 3 × 2 stations walked with one free zero; every reading shifted alike. */
function heights(shift: number) {
  const steps = [
    ['P00', 'P10', 5],
    ['P10', 'P20', -5],
    ['P01', 'P11', 2],
    ['P11', 'P21', 8],
    ['P00', 'P01', 30],
    ['P10', 'P11', 10],
    ['P20', 'P21', 7],
  ] as const;
  const names = ['P00', 'P10', 'P20', 'P01', 'P11', 'P21'];
  const sheet = validateSheet({
    sheet: 1,
    kind: 'network',
    stations: Object.fromEntries(names.map((name) => [name, [100 * Number(name[1]), 100 * Number(name[2])]])),
    lines: { row: ['P00', 'P10', 'P20'] },
    walks: [{ id: 'w', readings: steps.map(([from, to, value]) => [from, to, value + shift]) }],
  });
  return Object.values(reduce(sheet).stations).map(({ heightUm }) => heightUm);
}

test('stations beside the one line do not lean with the zero of the level', () => {
  heights(1000).forEach((height, k) => {
    expect(height).toBeCloseTo(heights(0)[k]!, 8);
  });
});
