import { expect, test } from 'vitest';
import { begin, type Session } from '../../../shared/session/fold.ts';
import { setupSchema } from '../../../shared/session/setup.ts';
import { nearestPlacement } from './nearest-placement.ts';

const setup = setupSchema.parse({
  kind: 'bed',
  part: 'bed',
  surface: 'ways',
  lengthMm: 600,
  gaugeMm: 300,
  baseMm: 150,
  stations: 5,
  instrument: { name: 'level', source: 'typed', unit: 'um/m' },
});
const session: Session = begin({
  recording: 1,
  id: 'made',
  program: 'test',
  t: 0,
  setup,
} as Session['header']);
const pointOf = (name: string) => {
  const { xMm, yMm } = session.plan.stations.find((station) => station.name === name)!;
  return { x: xMm, y: yMm };
};

test('the step under the finger, of the run that is walked now', () => {
  expect(nearestPlacement(session, pointOf, { x: 230, y: 8 })).toEqual({
    run: 'front out',
    at: ['F1', 'F2'],
  });
  const back = { ...session, next: session.placements.find(({ run }) => run === 'front back')! };
  expect(nearestPlacement(back, pointOf, { x: 230, y: 8 })?.run).toBe('front back');
});

test('a rung in the middle of the bed', () => {
  expect(nearestPlacement(session, pointOf, { x: 305, y: 150 })).toEqual({ run: 'across', at: ['F2', 'R2'] });
});

test('a tap beside everything is none', () => {
  expect(nearestPlacement(session, pointOf, { x: 375, y: 90 })).toBeNull();
});
