import { describe, expect, test } from 'vitest';
import { type Placement, placementsOf } from '../survey/plan.ts';
import type { Header, SessionEvent } from './events.ts';
import { fold, type Session } from './fold.ts';
import { resultOf } from './result.ts';
import { type SetupInput, setupSchema } from './setup.ts';
import { toSheet } from './to-sheet.ts';

/** Constructed sessions: every placement of the plan, in its order, with the value that `reads` gives. */
function taken(input: SetupInput, reads: (place: Placement, k: number) => number | null): Session {
  const header: Header = { recording: 1, id: 'a', program: 'test', t: 0, setup: setupSchema.parse(input) };
  const { plan } = fold(header, []);
  const places = plan.runs.filter(({ wanted }) => wanted).flatMap(placementsOf);
  const how = { from: 'D1', spread: null, readings: null, count: 1, by: 'typed', steadiness: null } as const;
  const events = places.flatMap((place, k): SessionEvent[] => {
    const value = reads(place, k);
    return value === null ? [] : [{ seq: k + 1, t: k, m: k, type: 'take', place, value, ...how }];
  });
  return fold(header, events);
}

const common = { part: 'p', surface: 's', instrument: { name: 'D1', source: 'typed', unit: 'um' } } as const;
const level = { name: 'L2', source: 'typed', unit: 'um/m' } as const;

describe('the sheet of each kind', () => {
  test('a slide: own offset for each sweep, the slope known, both faces', () => {
    const sheet = toSheet(
      taken(
        { ...common, kind: 'slide', travelMm: 200, stations: 2, faces: 'both', plus: 'low', limit: 8 },
        (_, k) => k,
      ),
    );
    expect(sheet).toMatchObject({
      kind: 'slide',
      lines: { top: ['T0', 'T1'], side: ['S0', 'S1'] },
      sweeps: [
        {
          id: 'top out',
          offset: 'free',
          slope: 'known',
          sense: -1,
          readings: [
            ['T0', 0],
            ['T1', 1],
          ],
        },
        {
          id: 'top back',
          readings: [
            ['T1', 2],
            ['T0', 3],
          ],
        },
        { id: 'side out' },
        { id: 'side back' },
      ],
      limits: [
        { figure: 'top.parallelism', max: 8 },
        { figure: 'side.parallelism', max: 8 },
      ],
    });
  });

  test('a straightedge: its error told apart where it was read both ways, its slope by eye', () => {
    const input = { ...common, kind: 'straightedge', lengthMm: 300, stations: 4 } as const;
    const whole = toSheet(taken(input, (_, k) => k));
    expect(whole.kind).toBe('way');
    expect(whole.sweeps).toMatchObject([
      { id: 'way as it stands', offset: 'free', slope: 'free', artefact: 'straightedge', turned: false },
      { id: 'way turned', offset: 'free', slope: 'free', artefact: 'straightedge', turned: true },
    ]);
    // F2 was not read with the straightedge turned.
    const part = toSheet(
      taken(input, ({ run, at }, k) => (run === 'way turned' && at[0] === 'F2' ? null : k)),
    );
    expect(part.lines).toEqual({ way: ['F0', 'F1', 'F3'] });
    expect(part.notes).toBe('Not tied to the rest yet and left out: F2.');
    const unturned = toSheet(taken(input, ({ run }, k) => (run === 'way turned' ? null : k)));
    expect(unturned.sweeps).toHaveLength(1);
    expect(unturned.sweeps?.[0]).not.toHaveProperty('artefact');
    expect(unturned.notes).toBe(
      'The straightedge has not been turned yet: its own error is still in these figures.',
    );
  });

  test('a sweep of free slope is written from its first station on, in whatever order it was taken', () => {
    const input = { ...common, kind: 'straightedge', lengthMm: 200, stations: 3 } as const;
    const session = taken(input, (_, k) => k);
    const again = session.takes[0]!.event;
    const repeated = fold(session.header, [
      ...session.takes.map(({ event }) => event),
      { ...again, seq: 100, value: 9, replaces: again.seq },
    ]);
    expect(toSheet(repeated).sweeps?.[0]?.readings).toEqual([
      ['F0', 9],
      ['F1', 1],
      ['F2', 2],
    ]);
  });

  test('a square: slopes known, limit on its squareness', () => {
    const sheet = toSheet(taken({ ...common, kind: 'square', lengthMm: 300, limit: 20 }, (_, k) => k));
    expect(sheet).toMatchObject({
      kind: 'square',
      lines: { blade: ['U0', 'U1'] },
      sweeps: [{ slope: 'known', artefact: 'square', turned: false }, { turned: true }],
      limits: [{ figure: 'squareness', max: 20 }],
    });
  });

  test('a bar: the sag is added on top and said, not at the side; each plane has its own error', () => {
    const input = { ...common, kind: 'bar', lengthMm: 300, stations: 2, sagUm: 3, plus: 'low' } as const;
    const sheet = toSheet(taken(input, () => 0));
    expect(sheet.sweeps?.map(({ artefact, readings }) => [artefact, readings.at(-1)])).toEqual([
      ['top of the bar', ['T1', -3]],
      ['top of the bar', ['T1', -3]],
      ['side of the bar', ['S1', 0]],
      ['side of the bar', ['S1', 0]],
    ]);
    expect(sheet.notes).toBe(
      'The bar hangs down by 3 µm at its far station: the readings on top are corrected for that.',
    );
    expect(resultOf(taken(input, () => 0)).figures['top.slope']?.value).toBeCloseTo(10, 9);
  });

  test('a dovetail: whole sizes, offset and slope known, with its pins', () => {
    const instrument = { ...common.instrument, unit: 'mm', sigma: 0.001 } as const;
    const sheet = toSheet(
      taken(
        { ...common, kind: 'dovetail', lengthMm: 200, stations: 2, pinDiameterMm: 10, instrument },
        () => 67.3,
      ),
    );
    expect(sheet).toMatchObject({
      kind: 'dovetail',
      units: { height: 'mm' },
      pins: { diameter: 10, angleDeg: 55, form: 'male' },
      sweeps: [
        {
          offset: 'known',
          slope: 'known',
          sense: 1,
          sigma: 0.001,
          readings: [
            ['D0', 67.3],
            ['D1', 67.3],
          ],
        },
      ],
    });
  });

  test('a plate: one zero for all lines; one line by itself is a way and is not judged', () => {
    const input = {
      ...common,
      kind: 'plate',
      lengthMm: 450,
      widthMm: 350,
      baseMm: 100,
      limit: 5,
      instrument: level,
    } as const;
    const sheet = toSheet(taken({ ...input, back: 'turned' }, () => 0));
    expect(new Set(sheet.walks?.map(({ zero }) => zero))).toEqual(new Set(['level']));
    expect(sheet.walks?.slice(0, 2).map(({ facing }) => facing)).toEqual([1, -1]);
    expect(sheet.limits).toEqual([{ figure: 'flatness.minimumZone', max: 5 }]);
    const line = toSheet(
      taken({ ...input, back: 'no' }, ({ run }) => (run === 'first diagonal out' ? 0 : null)),
    );
    expect(line.kind).toBe('way');
    expect(line).not.toHaveProperty('limits');
  });

  test('a bed in the making stays a way until its pairs cut nothing short', () => {
    const input = {
      ...common,
      kind: 'bed',
      lengthMm: 400,
      gaugeMm: 300,
      baseMm: 200,
      stations: 3,
      instrument: level,
    } as const;
    const kinds = [1, 4, 5, 6, 7].map(
      (count) => toSheet(taken(input, (_, k) => (k < count ? 0 : null))).kind,
    );
    expect(kinds).toEqual(['way', 'way', 'way', 'way', 'bed']);
  });
});

test('what is not proved is assumed to be sure to 1 µm/m or 1 µm, whatever the instrument counts in', () => {
  const instrument = { ...level, unit: 'mm/m', graduation: 0.02 } as const;
  const way = { ...common, kind: 'way', lengthMm: 400, baseMm: 200, stations: 3, back: 'no' } as const;
  const sheet = toSheet(taken({ ...way, instrument }, () => 1.5));
  expect(sheet.units).toEqual({ length: 'mm', tilt: 'um/m' });
  expect(sheet.walks?.[0]?.readings[0]?.[2]).toBeCloseTo(30, 9);
  const proved = toSheet(taken({ ...way, instrument: { ...instrument, sigma: 0.5 } }, () => 1.5));
  expect(proved).toMatchObject({
    units: { tilt: 'mm/m' },
    walks: [
      {
        sigma: 0.01,
        readings: [
          ['F0', 'F1', 0.03],
          ['F1', 'F2', 0.03],
        ],
      },
    ],
  });
});

test('a steady drift is taken off as one unknown of out and back; where the level was turned it can not be', () => {
  const way = { ...common, kind: 'way', lengthMm: 800, baseMm: 200, stations: 5, instrument: level } as const;
  const bow = [4, 1, -1, -4, -4, -1, 1, 4];
  const session = taken(way, (_, k) => bow[k]! + 0.5 * k);
  const sheet = toSheet(session, { drift: true });
  expect(sheet.walks).toMatchObject([{ id: 's out and back', drift: true }]);
  const [plain, drifting] = [resultOf(session), resultOf(session, undefined, { drift: true })];
  // Out and back cancel it either way; what is left of the scatter is nothing.
  expect(drifting.lines.s!.stations.F2!.heightUm).toBeCloseTo(plain.lines.s!.stations.F2!.heightUm, 9);
  expect(plain.fit.s0).toBeGreaterThan(0.5);
  expect(drifting.fit.s0).toBeLessThan(1e-9);
  expect(
    toSheet(
      taken({ ...way, back: 'turned' }, () => 0),
      { drift: true },
    ).walks,
  ).toMatchObject([{ drift: false }, { drift: false }]);
});
