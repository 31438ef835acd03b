import { expect, test } from 'vitest';
import { keepApart, type PlacedLabel } from './keep-apart.ts';

const label = (text: string, x: number, y: number, anchor: PlacedLabel['anchor'] = 'start'): PlacedLabel => ({
  text,
  x,
  y,
  anchor,
  kind: 'name',
});

test('what comes first stays, what would touch it goes', () => {
  const labels = [label('C 0.2 µm', 100, 50), label('P3 – P4', 130, 55), label('LM', 10, 50)];
  expect(keepApart(labels).map(({ text }) => text)).toEqual(['C 0.2 µm', 'LM']);
});

test('labels one above the other, or end to end, both stay', () => {
  expect(keepApart([label('C', 100, 50), label('C', 100, 70)])).toHaveLength(2);
  expect(keepApart([label('RM', 100, 50, 'end'), label('C', 105, 50)])).toHaveLength(2);
});
