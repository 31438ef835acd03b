import { expect, test } from 'vitest';
import { sampleSession, sampleTake } from '../sample-session.ts';
import { happenings } from './happenings.ts';

const typed = (unit: 'um/m' | 'mm/m', graduation: number) =>
  sampleSession([sampleTake(0, -1.5)], {
    instrument: { name: 'L2', source: 'typed', unit, graduation },
  });

test('a reading is told in its unit', () => {
  expect(happenings(typed('um/m', 1), 9)[0]?.text).toContain('F0–F1: minus 1.5 µm/m');
});

test('a reading in graduations is told in graduations', () => {
  expect(happenings(typed('mm/m', 0.02), 9)[0]?.text).toContain('F0–F1: minus 1.5 graduations of 0.02 mm/m');
});
