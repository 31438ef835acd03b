import { expect, test } from 'vitest';
import { begin, type Session } from '../../../shared/session/fold.ts';
import { setupSchema } from '../../../shared/session/setup.ts';
import { namedStations, placeInWords } from './plate-names.ts';
import type { PlateSession } from './plate-session.ts';

function plate(pattern: 'eight lines' | 'grid'): PlateSession {
  const setup = setupSchema.parse({
    kind: 'plate',
    part: 'plate',
    surface: 'top',
    lengthMm: 650,
    widthMm: 450,
    baseMm: 100,
    pattern,
    instrument: { name: 'level', source: 'typed', unit: 'um/m' },
  });
  return begin({
    recording: 1,
    id: 'made',
    program: 'test',
    t: 0,
    setup,
  } as Session['header']) as PlateSession;
}

test('places are called as one stands before the plate', () => {
  const session = plate('eight lines');
  const words = (name: string) => placeInWords(session, name);
  expect(['NL', 'FR', 'NM', 'RM', 'C'].map(words)).toEqual([
    'near left corner',
    'far right corner',
    'near edge',
    'right edge',
    'about the middle',
  ]);
  expect(words('P1')).toBe('near left');
});

test('of eight lines the crossings are named, of a grid the corners and the worst closure', () => {
  const names = (session: PlateSession, worst?: string) =>
    namedStations(session, worst ? [{ station: worst, lines: [], closureUm: 1, uUm: 0.1 }] : []).map(
      ({ name }) => name,
    );
  expect(names(plate('eight lines')).sort()).toEqual(['C', 'FL', 'FM', 'FR', 'LM', 'NL', 'NM', 'NR', 'RM']);
  expect(names(plate('grid')).sort()).toEqual(['A0', 'A6', 'E0', 'E6']);
  expect(names(plate('grid'), 'B2')).toContain('B2');
  expect(names(plate('grid'), 'A0').filter((name) => name === 'A0')).toHaveLength(1);
});
