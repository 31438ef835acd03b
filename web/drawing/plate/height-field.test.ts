import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { begin, type Session } from '../../../shared/session/fold.ts';
import { setupSchema } from '../../../shared/session/setup.ts';
import { heightField } from './height-field.ts';
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
  const session: Session = begin({
    recording: 1,
    id: 'made',
    program: 'test',
    t: 0,
    setup,
  } as Session['header']);
  return session as PlateSession;
}

/** A plane, so that every straight way between stations is exact. */
const plane = (x: number, y: number) => 2 + 0.03 * x - 0.05 * y;
const heightsOf = (session: PlateSession, height: (x: number, y: number) => number, lines?: string[]) => {
  const names = new Set(
    (lines ?? Object.keys(session.plan.lines)).flatMap((line) => session.plan.lines[line] ?? []),
  );
  return new Map(
    session.plan.stations
      .filter(({ name }) => names.has(name))
      .map(({ name, xMm, yMm }) => [name, height(xMm, yMm)]),
  );
};

describe.each(['eight lines', 'grid'] as const)('%s', (pattern) => {
  const session = plate(pattern);

  test('passes through every station', () => {
    const rough = (x: number, y: number) => 3 * Math.sin(x / 40) + 2 * Math.cos(y / 30);
    const field = heightField(session, heightsOf(session, rough));
    for (const { xMm, yMm } of session.plan.stations) {
      expect(field(xMm, yMm)).toBeCloseTo(rough(xMm, yMm), 9);
    }
  });

  test('makes a plane of a plane, and nothing beyond the stations', () => {
    const field = heightField(session, heightsOf(session, plane));
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(share, share, (u, v) => {
        expect(field(600 * u, 400 * v)).toBeCloseTo(plane(600 * u, 400 * v), 9);
      }),
    );
    expect(field(-1, 200)).toBeNull();
    expect(field(300, 401)).toBeNull();
  });

  test('nothing is known from nothing', () => {
    expect(heightField(session, new Map())(300, 200)).toBeNull();
  });
});

describe('eight lines half walked', () => {
  const session = plate('eight lines');

  test('a sector is known once its edge and its two diagonals are', () => {
    const field = heightField(
      session,
      heightsOf(session, plane, ['first diagonal', 'second diagonal', 'near edge']),
    );
    expect(field(300, 50)).toBeCloseTo(plane(300, 50), 9);
    expect(field(300, 350)).toBeNull();
    expect(field(50, 200)).toBeNull();
  });

  test('a centre line is followed, not bridged', () => {
    const bump = (x: number, y: number) => (x === 300 && y > 0 && y < 200 ? 5 : 0);
    const field = heightField(session, heightsOf(session, bump));
    expect(field(300, 100)).toBeCloseTo(5, 9);
  });
});
