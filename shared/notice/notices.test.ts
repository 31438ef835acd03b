import { describe, expect, test } from 'vitest';
import type { Header, NewEvent, SessionEvent } from '../session/events.ts';
import { fold, type Session } from '../session/fold.ts';
import { resultOf } from '../session/result.ts';
import { type SetupInput, setupSchema } from '../session/setup.ts';
import { type Placement, placementsOf } from '../survey/plan.ts';
import type { Circumstances, Notice, NoticeCode } from './notice.ts';
import { notices } from './notices.ts';
import { polynomial } from './polynomial.ts';
import { thermalBowUm } from './temperature.ts';

/** Constructed set-ups and readings. */
const way = {
  kind: 'way',
  part: 'bed',
  surface: 'front way',
  lengthMm: 900,
  baseMm: 150,
  stations: 7,
  back: 'no',
  instrument: { name: 'L2', source: 'typed', unit: 'um/m', sigma: 0.5 },
} satisfies SetupInput;
const straightedge = {
  ...way,
  kind: 'straightedge',
  stations: 4,
  instrument: { name: 'D1', source: 'typed', unit: 'um', sigma: 0.5 },
} satisfies SetupInput;

function session(input: SetupInput, news: (places: readonly Placement[]) => NewEvent[]): Session {
  const setup = setupSchema.parse(input);
  const header: Header = { recording: 1, id: 'a', program: 'test', t: 0, setup };
  const places = fold(header, []).plan.runs.flatMap(placementsOf);
  return fold(
    header,
    news(places).map((event, k) => ({ seq: k + 1, t: k, m: k, ...event }) as SessionEvent),
  );
}

const take = (place: Placement, value: number, more: object = {}): NewEvent => ({
  type: 'take',
  place,
  from: 'L2',
  value,
  spread: null,
  readings: null,
  count: 1,
  by: 'typed',
  steadiness: null,
  ...more,
});
const walked = (places: readonly Placement[]) => places.slice(0, 6).map((place) => take(place, 0));

function told(on: Session, code: NoticeCode, circumstances: Circumstances = {}): Notice | undefined {
  return notices(on, resultOf(on), circumstances).find((notice) => notice.code === code);
}

describe('what is noticed', () => {
  test('readings that nothing checks, and what would', () => {
    expect(told(session(way, walked), 'unchecked')?.text).toBe(
      'Nothing checks these readings yet. Walk back over them.',
    );
    expect(told(session({ ...way, back: 'same' }, walked), 'unchecked')?.text).toBe(
      'Nothing checks these readings yet. What is still to be read will.',
    );
    const half = session({ ...way, back: 'same' }, (places) => [
      ...walked(places),
      ...places.slice(6, 9).map((place) => take(place, 0)),
    ]);
    expect(told(half, 'unchecked')?.text).toMatch(/^Nothing checks F0 – F1, F1 – F2, F2 – F3\./);
  });

  test('a skipped place cuts the way in two: the loose end is named, and what would tie it', () => {
    const cut = session(way, (places) => [
      ...walked(places).slice(0, 4),
      { type: 'skip', place: places[4]!, reason: 'clamp' },
      take(places[5]!, 0),
    ]);
    expect(told(cut, 'untied')).toEqual({
      code: 'untied',
      text: "F5, F6 can't be tied to the rest and are left out. Nobody has read F4 – F5: read it, or a place that joins them.",
      place: { run: 'front way out', at: ['F4', 'F5'] },
      warns: true,
    });
    expect(
      told(
        session(way, (places) => [take(places[0]!, 0), take(places[3]!, 0)]),
        'untied',
      ),
    ).toBeUndefined();
  });

  test('a straightedge that was given back unturned', () => {
    const unturned = session(straightedge, (places) => [
      ...places.slice(0, 4).map((place) => take(place, 1)),
      { type: 'run', run: 'way turned', on: false },
    ]);
    expect(told(unturned, 'not-turned')?.text).toBe(
      'The straightedge was read in one position only: its own error is in these figures. Turn it and sweep again.',
    );
  });

  test('a silence of the instrument between two takes of one walk', () => {
    const silent = session(way, (places) => [
      take(places[0]!, 0),
      { type: 'gap', from: 'L2', is: 'lost', why: 'nothing came for 1.5 s' },
      { type: 'gap', from: 'L2', is: 'back', why: 'readings come again' },
      take(places[1]!, 0),
    ]);
    expect(told(silent, 'stream-lost')).toMatchObject({ place: { at: ['F0', 'F1'] }, warns: true });
    const before = session(way, (places) => [
      { type: 'gap', from: 'L2', is: 'lost', why: 'nothing came for 1.5 s' },
      take(places[0]!, 0),
      take(places[1]!, 0),
    ]);
    expect(told(before, 'stream-lost')).toBeUndefined();
  });

  test('takes that were insisted on', () => {
    const hasty = session(way, (places) => [
      take(places[0]!, 0),
      take(places[1]!, 0, { steadiness: 'settling' }),
    ]);
    expect(told(hasty, 'unsettled')?.text).toBe(
      'Taken before it was steady: F1 – F2. Repeat when it is quiet.',
    );
  });

  test('steps that are not as long as the feet stand apart, diagonals by themselves', () => {
    const plate = {
      kind: 'plate',
      part: 'plate',
      surface: 'top',
      lengthMm: 850,
      widthMm: 650,
      borderMm: 25,
      baseMm: 100,
      instrument: way.instrument,
    } satisfies SetupInput;
    const first = (places: readonly Placement[]) => [take(places[0]!, 0)];
    expect(told(session(plate, first), 'foot-spacing')).toBeUndefined();
    expect(told(session({ ...plate, diagonalBaseMm: 125 }, first), 'foot-spacing')).toBeUndefined();
    expect(told(session({ ...plate, diagonalBaseMm: 120 }, first), 'foot-spacing')?.text).toBe(
      'first diagonal and second diagonal: the steps are 125 mm and the feet stand 120 mm apart, so no foot stands on 5 mm of every step. Set the feet to 125 mm for these lines, or choose another foot spacing.',
    );
    expect(told(session({ ...plate, lengthUnit: 'in', baseMm: 110 }, first), 'foot-spacing')?.text).toMatch(
      /the steps are 3\.937 in and the feet stand 4\.331 in apart, so the steps overlap by 0\.394 in/,
    );
  });

  test('a last digit that is too coarse for the limit', () => {
    // 20 µm/m over √12 is 5.8 µm/m; times 150 mm times √6/2 is 1.06 µm, twice that 2.1 µm.
    const limited = session({ ...way, limit: 5 }, walked);
    expect(told(limited, 'resolution', { resolution: 20 })?.text).toMatch(
      /its last digit of 20 µm\/m alone leaves 2\.1 µm of doubt over 900 mm, and the limit is 5 µm/,
    );
    expect(told(limited, 'resolution', { resolution: 10 })).toBeUndefined();
    expect(told(session(way, walked), 'resolution', { resolution: 1000 })).toBeUndefined();
  });

  test('a difference of temperature and the bow that it would make, measured or guessed', () => {
    const on = session({ ...way, airC: 22, partC: 20, limit: 10 }, walked);
    expect(told(on, 'temperature', { depthMm: 100, topC: 21, bottomC: 20 })?.text).toBe(
      'The top is 1.0 °C warmer than the bottom: 900 mm long and 100 mm deep, that bows iron 11 µm proud. Nothing is taken off for it; let it come to rest and repeat.',
    );
    expect(told(on, 'temperature', { depthMm: 300 })?.text).toBe(
      'The air is 2.0 °C warmer than the part. If that stands between its top and its bottom, 900 mm long and 300 mm deep, it bows up to 7.4 µm. Nothing is taken off for it; let it come to rest.',
    );
    expect(told(on, 'temperature', { depthMm: 900 })).toBeUndefined();
  });

  test('readings that scatter as a whole', () => {
    const noisy = [3, -3, 3, -3, 3, -3];
    const on = session({ ...way, back: 'same' }, (places) =>
      places.map((place, k) => take(place, k < 6 ? 0 : noisy[k - 6]!)),
    );
    const found = notices(on, resultOf(on)).map(({ code }) => code);
    expect(found).toContain('suspect');
    const proved = { ...way, back: 'same' as const, instrument: { ...way.instrument, sigma: 1 } };
    const quieter = session(proved, (places) =>
      places.map((place, k) => take(place, k < 6 ? 0 : noisy[k - 6]!)),
    );
    expect(told(quieter, 'scatter')?.text).toMatch(/^The readings scatter 2\.\d times as much/);
  });

  test('the most urgent stands first', () => {
    const on = session({ ...way, lengthMm: 1200 }, (places) => [
      take(places[0]!, 0),
      take(places[1]!, 0, { steadiness: 'settling' }),
      { type: 'unit', from: 'L2', unit: 'mm/m', acknowledged: false },
    ]);
    expect(notices(on, resultOf(on)).map(({ code }) => code)).toEqual([
      'unit-changed',
      'unsettled',
      'measured-length',
      'unchecked',
    ]);
  });

  test('nothing, before the first take', () => {
    expect(
      notices(
        session(way, () => []),
        null,
      ),
    ).toEqual([]);
  });
});

test('a part of 900 mm, 100 mm deep, bows by 11 µm for 1 °C from top to bottom', () => {
  // κ = α·ΔT/h and sagitta κ·L²/8 (theory of the bimetal strip with one metal; any handbook of engineering).
  expect(thermalBowUm({ lengthMm: 900, depthMm: 100 }, 1)).toBeCloseTo(11.1, 1);
});

test('least squares on two columns', () => {
  const x = [0, 1, 2, 3, 4];
  const y = [0, 1, 4, 9, 16];
  const exact = x.map((value, k) => 7 + 2 * value - 3 * y[k]!);
  const { coefficients, u } = polynomial([x, y], exact);
  expect(coefficients[0]).toBeCloseTo(2, 9);
  expect(coefficients[1]).toBeCloseTo(-3, 9);
  expect(Math.max(...u)).toBeLessThan(1e-9);
  // The straight-line fit of 1, 2, 2, 3 on 0, 1, 2, 3 has slope 0.6 with standard error √(0.1/5), worked by hand.
  const line = polynomial([[0, 1, 2, 3]], [1, 2, 2, 3]);
  expect(line.coefficients[0]).toBeCloseTo(0.6, 12);
  expect(line.u[0]).toBeCloseTo(Math.sqrt(0.1 / 5), 12);
});
