import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { provedOf, provedSentence } from './instruments.ts';
import { progressOf } from './progress.ts';
import { again, type Pose, type Proving, posesIn, provingSchema, stepsOf, withTake } from './proving.ts';
import { zeroOf } from './zero.ts';

const level = provingSchema.parse({
  name: 'L2',
  reads: 'tilt',
  source: 'cable',
  port: 'usb:0403:6001:serial:A1:00',
  profile: 'line-decimal',
  unit: 'um/m',
  unitOpen: true,
  graduation: 1,
  resolution: 0.1,
  baseMm: 150,
  stepUm: 100,
  stepIs: 'feeler',
  by: 'visitor',
  takes: [],
});

/** What a level with a zero of 38 reads on a place that slopes by 12, with a step of 667 µm/m. */
const readings: Record<Pose, number> = {
  rest: 50,
  moved: 250,
  flat: 50.2,
  'on-step': 716.5,
  'as-is': 50.1,
  turned: 26.1,
  'seat-1': 50.1,
  'seat-2': 50.4,
  'seat-3': 49.8,
  'seat-4': 50.3,
  'seat-5': 49.9,
};

function read(proving: Proving, pose: Pose, value = readings[pose]): Proving {
  return withTake(proving, { pose, value, spread: 0.2 });
}

function walked(proving: Proving, values: Partial<Record<Pose, number>> = {}): Proving {
  let now = proving;
  for (;;) {
    const { pose } = progressOf(now);
    if (!pose) return now;
    now = read(now, pose, values[pose]);
  }
}

describe('the steps of a proving', () => {
  test('follow each other to the end', () => {
    const proving = walked(level);
    expect(progressOf(proving)).toMatchObject({ step: null, pose: null });
    expect(proving.takes.map(({ pose }) => pose)).toEqual(
      stepsOf(level).flatMap((step) => [...posesIn(step)]),
    );
    const proved = provedOf(proving, 0, '2026-02-03');
    expect(provedSentence(proved)).toBe(
      'Level L2 proved: plus means far foot (cable end) HIGH, 1 count = 1 µm/m, zero 38.1 µm/m, spread 0.3 µm/m',
    );
    expect(progressOf(proving).verdicts.map(({ sentence }) => sentence)).toEqual([
      'It went up, far beyond its noise: plus means far foot (cable end) HIGH.',
      '100 µm under one foot, 150 mm from the other, is 667 µm/m; it read 0.999 times that, sure to 6 %: the unit is right.',
      'On level ground it reads 38.1 µm/m, sure to 0.4 µm/m.',
      'Set down five times it spreads by 0.3 µm/m, itself sure to 0.2 µm/m.',
    ]);
  });

  test('an indicator has no zero, and says what plus means of the metal', () => {
    const { baseMm: _, ...rest } = level;
    const indicator = provingSchema.parse({ ...rest, name: 'I1', reads: 'height', unit: 'um' });
    const proving = walked(indicator, { rest: 0, moved: -60, flat: 0, 'on-step': -101 });
    expect(provedSentence(provedOf(proving, 0, '2026-02-03'))).toBe(
      'Indicator I1 proved: plus means LOW, 1 count = 1 µm, spread 0.3 µm',
    );
  });

  test('what hardly moved proves nothing, and the step is done again', () => {
    const proving = read(read(level, 'rest'), 'moved', 50.3);
    expect(progressOf(proving)).toMatchObject({ step: 'sign', pose: null, verdicts: [{ is: 'doubtful' }] });
    expect(progressOf(again(proving, 'sign'))).toMatchObject({ step: 'sign', pose: 'rest', verdicts: [] });
    expect(() => provedOf(proving, 0, '2026-02-03')).toThrow(/hardly moved/);
  });

  test('a step under the other foot is told from a wrong sign', () => {
    const proving = walked(level, { 'on-step': -616 });
    expect(progressOf(proving)).toMatchObject({ step: 'scale', pose: null });
    expect(progressOf(proving).verdicts.at(-1)?.sentence).toContain('the other way');
  });

  test('a step too small to tell is not taken for proof', () => {
    const thin = provingSchema.parse({ ...level, stepUm: 10 });
    const { verdicts } = progressOf(walked(thin, { 'on-step': 50.2 + 66.7 }));
    expect(verdicts.at(-1)).toMatchObject({ is: 'doubtful', remedy: expect.stringContaining('larger') });
  });

  test('another unit is judged on the same readings', () => {
    const wrong = walked({ ...level, unit: 'arcsec' });
    expect(progressOf(wrong)).toMatchObject({ step: 'scale', verdicts: [{}, { fits: 'um/m' }] });
    expect(progressOf(walked({ ...wrong, unit: 'um/m' })).step).toBeNull();
  });
});

test('the slope of the place drops out of the zero', () => {
  const number = fc.double({ min: -500, max: 500, noNaN: true });
  fc.assert(
    fc.property(number, number, (zero, slope) => {
      const proving = read(read(level, 'as-is', zero + slope), 'turned', zero - slope);
      expect(zeroOf(proving)?.value).toBeCloseTo(zero, 9);
    }),
    { verbose: 1 },
  );
});

test('a mirrored instrument is proved with the other sign and is else the same', () => {
  const mirrored = Object.fromEntries(Object.entries(readings).map(([pose, value]) => [pose, -value]));
  const [one, other] = [
    provedOf(walked(level), 0, '2026-02-03'),
    provedOf(walked(level, mirrored), 0, '2026-02-03'),
  ];
  expect(other.sign).toBe(-one.sign);
  expect(other.sigma).toBeCloseTo(one.sigma, 12);
  expect(other.zero).toBeCloseTo(-one.zero!, 12);
});

test('five equal readings are no better than the steps of the reading', () => {
  const equal = Object.fromEntries(posesIn('spread').map((pose) => [pose, 50]));
  expect(provedOf(walked(level, equal), 0, '2026-02-03').sigma).toBeCloseTo(0.1 / Math.sqrt(12), 12);
});
