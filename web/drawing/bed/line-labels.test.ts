import { expect, test } from 'vitest';
import { type LabelledCurve, lineLabels } from './line-labels.ts';

const frame = { leftPx: 60, rightPx: 800, heightPx: 200 };
const widthOf = (name: string) => 8 * name.length;
const curve = (name: string, y: (k: number) => number): LabelledCurve => ({
  name,
  points: Array.from({ length: 13 }, (_, k) => ({ x: 70 + 60 * k, y: y(k), halfPx: 5 })),
});

test('names stand outside of two curves that run apart, and inside the frame', () => {
  const labels = lineLabels(
    [curve('front', (k) => 100 + 5 * k), curve('rear', (k) => 100 - 5 * k)],
    frame,
    widthOf,
  );
  const [front, rear] = labels;
  const yAt = (x: number, slope: number) => 100 + (slope * (x - 70)) / 12;
  for (const [label, slope, other] of [
    [front!, 1, -1],
    [rear!, -1, 1],
  ] as const) {
    for (const each of [slope, other]) {
      const line = yAt(label.x, each);
      expect(label.y - 13 > line + 5 || label.y + 3 < line - 5, `${label.name} clear of ${each}`).toBe(true);
    }
    expect(label.y - 13).toBeGreaterThan(0);
    expect(label.y + 3).toBeLessThan(frame.heightPx);
    expect(label.x - widthOf(label.name) / 2).toBeGreaterThanOrEqual(frame.leftPx);
    expect(label.x + widthOf(label.name) / 2).toBeLessThanOrEqual(frame.rightPx);
  }
});

test('two names do not stand on each other where the curves are one', () => {
  const [front, rear] = lineLabels([curve('front', () => 100), curve('rear', () => 100)], frame, widthOf);
  expect(Math.abs(front!.x - rear!.x) > 36 || Math.abs(front!.y - rear!.y) > 15).toBe(true);
});

test('a curve without points has no name', () => {
  expect(lineLabels([{ name: 'rear', points: [] }], frame, widthOf)).toEqual([]);
});
