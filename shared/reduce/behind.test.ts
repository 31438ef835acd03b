import { expect, test } from 'vitest';
import { reduce } from '../reduce.ts';
import { type SheetInput, validateSheet } from '../sheet/sheet.ts';
import { readingsBehind } from './behind.ts';

const names = ['F0', 'F1', 'F2', 'F3', 'F4'];
const slopes = [12, -7, 3, 5];

function sheet(change: (run: string, k: number) => number = () => 0): SheetInput {
  const walk = (id: string, facing: 1 | -1) => ({
    id,
    facing,
    zero: 'free' as const,
    readings: slopes.map(
      (slope, k) =>
        [names[k]!, names[k + 1]!, facing * slope + 3 + change(id, k)] as [string, string, number],
    ),
  });
  return {
    sheet: 1,
    kind: 'way',
    stations: Object.fromEntries(names.map((name, k) => [name, [150 * k, 0]])),
    lines: { way: names },
    walks: [walk('out', 1), walk('back', -1)],
    gravityCurvature: 'off',
  };
}

const heightOf = (input: SheetInput, station: string, reference: 'ends' | 'leastSquares') =>
  reduce(validateSheet(input), { reference }).lines.way!.stations[station]!.heightUm;

test.each(['ends', 'leastSquares'] as const)(
  'a height against %s is the sum of weight × reading, and moves by the weight when a reading does',
  (reference) => {
    for (const station of names) {
      const behind = readingsBehind(validateSheet(sheet()), { line: 'way', station, over: reference });
      expect(behind.map(({ run }) => run)).toEqual([...slopes.map(() => 'out'), ...slopes.map(() => 'back')]);
      const sum = behind.reduce((total, { run, at, weight }) => {
        const k = names.indexOf(at[0]);
        return total + weight * ((run === 'out' ? 1 : -1) * slopes[k]! + 3);
      }, 0);
      expect(sum).toBeCloseTo(heightOf(sheet(), station, reference), 9);
      for (const { run, at, weight } of behind) {
        const more = sheet((id, k) => (id === run && names[k] === at[0] ? 1 : 0));
        const moved = heightOf(more, station, reference) - heightOf(sheet(), station, reference);
        expect(moved).toBeCloseTo(weight, 9);
      }
    }
  },
);

test('a station that the line does not have is made of nothing', () => {
  const of = (line: string, station: string) =>
    readingsBehind(validateSheet(sheet()), { line, station, over: 'ends' });
  expect(of('way', 'Q1')).toEqual([]);
  expect(of('other', 'F1')).toEqual([]);
});
