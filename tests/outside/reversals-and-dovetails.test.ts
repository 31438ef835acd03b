import { describe, expect, test } from 'vitest';
import { pinAllowanceMm, widthFromPins } from '../../shared/figures/dovetail.ts';
import { reduce } from '../../shared/reduce.ts';
import { validateSheet } from '../../shared/sheet/sheet.ts';
import { expectClose } from '../tools/expect-close.ts';

// Machinery's Handbook as quoted on toolmonger: male x = D·(1 + cot(θ/2)) + a, female y = b − D·(1 + cot(θ/2)).
describe('dovetail over pins', () => {
  test.each([
    [60, 2.7320508],
    [55, 2.9209821],
    [50, 3.1445069],
    [45, 3.4142136],
  ])('1 + cot(α/2) at %d degrees', (angleDeg, factor) => {
    expect(pinAllowanceMm({ diameterMm: 1, angleDeg, form: 'male' })).toBeCloseTo(factor, 7);
  });

  test('male: 60°, 40 mm between the sharp corners, pins of 10 mm: 67.320508 over the pins', () => {
    const pins = { diameterMm: 10, angleDeg: 60, form: 'male' } as const;
    expect(40 + pinAllowanceMm(pins)).toBeCloseTo(67.320508, 6);
    expect(widthFromPins(67.320508, pins)).toBeCloseTo(40, 6);
  });

  test('male in inches: 60°, 1.0 in, pins of 0.25 in: printed 1.6830 over the pins', () => {
    const pins = { diameterMm: 0.25 * 25.4, angleDeg: 60, form: 'male' } as const;
    expect((25.4 + pinAllowanceMm(pins)) / 25.4).toBeCloseTo(1.683013, 6);
  });

  // The datum of the female side is the wide flat where flank meets flat; one of two published
  // calculators takes the narrow throat instead, so the width is named here.
  test('female: 60°, 40 mm across the wide flat, pins of 10 mm: 12.679492 between the pins', () => {
    const pins = { diameterMm: 10, angleDeg: 60, form: 'female' } as const;
    expect(40 + pinAllowanceMm(pins)).toBeCloseTo(12.679492, 6);
    expect(widthFromPins(12.679492, pins)).toBeCloseTo(40, 6);
  });

  // A third page prints W + D/sin(α/2) − D, 50.0 for the case above: another geometry, wrong for this use.
  test('the wrong formula of a third page is not ours', () => {
    const wrong = 40 + 10 / Math.sin(Math.PI / 6) - 10;
    expect(wrong).toBeCloseTo(50, 9);
    expect(40 + pinAllowanceMm({ diameterMm: 10, angleDeg: 60, form: 'male' })).not.toBeCloseTo(wrong, 0);
  });
});

/** A reduced sheet of sweeps over stations x mm apart, heights known but for what the artefact adds. */
function sweeps(
  kind: string,
  xMm: number[],
  runs: { readings: number[]; turned: boolean }[],
  slope: 'free' | 'known',
) {
  return reduce(
    validateSheet({
      sheet: 1,
      kind,
      stations: Object.fromEntries(xMm.map((x, k) => [`S${k}`, [x, 0]])),
      lines: { line: xMm.map((_, k) => `S${k}`) },
      sweeps: runs.map(({ readings, turned }, i) => ({
        id: `sweep ${i}`,
        artefact: 'artefact',
        turned,
        slope,
        offset: 'free',
        sigma: 1,
        readings: readings.map((reading, k) => [`S${k}`, reading]),
      })),
    }),
  );
}

// Constructed from the principle of reversal: what is turned changes its sign, what is not turned does not.
describe('reversal', () => {
  test('straightedge turned over: way 0, 2, 5, 3, 0, straightedge 0, −1, −2, −1.5, 0 µm', () => {
    const result = sweeps(
      'way',
      [0, 100, 200, 300, 400],
      [
        { readings: [0, 1, 3, 1.5, 0], turned: false },
        { readings: [0, 3, 7, 4.5, 0], turned: true },
      ],
      'free',
    );
    expectClose(
      Object.values(result.stations).map(({ heightUm }) => heightUm),
      [0, 2, 5, 3, 0],
      9,
    );
    expect(result.lines.line!.shape).toBe('crown');
  });

  test('square turned round over 300 mm: 12 and −4 µm are 4 µm of the machine and 8 of the square', () => {
    const result = sweeps(
      'square',
      [0, 300],
      [
        { readings: [0, 12], turned: false },
        { readings: [0, -4], turned: true },
      ],
      'known',
    );
    expect(result.figures.squareness!.value * 0.3).toBeCloseTo(4, 9);
    expect(result.figures.squareness!.unit).toBe('um/m');
    // 4 µm on 300 mm are 13.33 µm/m, 2.75 arc seconds
    expect(result.notes.join(' ')).toContain('4 µm over 300 mm (2.8 arc seconds)');
  });

  test('test bar half a turn: 0.000/0.010 near, 0.014/0.032 mm at 300: axis 0.018 on 300', () => {
    const result = sweeps(
      'bar',
      [0, 300],
      [
        { readings: [0, 14], turned: false },
        { readings: [10, 32], turned: true },
      ],
      'known',
    );
    expect(result.figures['line.slope']!.value * 0.3).toBeCloseTo(18, 9);
  });

  // lrak.net/wiki/reversal.html: slope (a + b)/2, zero (a − b)/2 with readings referred to one direction.
  test('level turned end for end: readings 30 and −14 µm/m as shown are a slope of 22 and a zero of 8', () => {
    const result = reduce(
      validateSheet({
        sheet: 1,
        kind: 'way',
        stations: { A: [0, 0], B: [250, 0] },
        lines: { line: ['A', 'B'] },
        walks: [
          { id: 'out', zero: 'level', facing: 1, sigma: 1, readings: [['A', 'B', 30]] },
          { id: 'back', zero: 'level', facing: -1, sigma: 1, readings: [['A', 'B', -14]] },
        ],
      }),
    );
    expect(result.zeros.level!.value).toBeCloseTo(8, 9);
  });

  // "A Unified Method for Form and Tilt Measurement": four readings of three unknowns.
  test('four positions: each unknown by the signs it had', () => {
    const [alpha, beta, gamma] = [3, -5, 0.25];
    const readings = [
      alpha + beta + gamma,
      -alpha + beta - gamma,
      -alpha - beta + gamma,
      alpha - beta - gamma,
    ];
    const [t1a, t1b, t2a, t2b] = readings as [number, number, number, number];
    expect((t1a - t1b - t2a + t2b) / 4).toBeCloseTo(alpha, 12);
    expect((t1a + t1b - t2a - t2b) / 4).toBeCloseTo(beta, 12);
    expect((t1a - t1b + t2a - t2b) / 4).toBeCloseTo(gamma, 12);
  });
});

// mig-welding.co.uk 147378: a gib of 320 mm from 5.5 to 8.7 mm is 1 : 100. An old lathe's, 12.25 in long,
// 0.355 to 0.213 in: 0.01159 in/in (the page prints 0.0116).
test('taper of gibs as slope times travel', () => {
  const gib = (lengthMm: number, thinMm: number, thickMm: number) =>
    reduce(
      validateSheet({
        sheet: 1,
        kind: 'slide',
        units: { height: 'mm' },
        stations: { thin: [0, 0], thick: [lengthMm, 0] },
        lines: { gib: ['thin', 'thick'] },
        sweeps: [
          {
            id: 'sizes',
            offset: 'known',
            slope: 'known',
            readings: [
              ['thin', thinMm],
              ['thick', thickMm],
            ],
          },
        ],
      }),
    ).figures['gib.taper']!.value /
    (1000 * lengthMm);
  expect(gib(320, 5.5, 8.7)).toBeCloseTo(1 / 100, 9);
  expect(gib(12.25 * 25.4, 0.213 * 25.4, 0.355 * 25.4)).toBeCloseTo(0.01159, 5);
});

test('dovetail: parallelism and taper of the sizes, and what they cannot tell', () => {
  const sizes = [67.32, 67.324, 67.33, 67.332];
  const result = reduce(
    validateSheet({
      sheet: 1,
      kind: 'dovetail',
      units: { height: 'mm' },
      pins: { diameter: 10, angleDeg: 60, form: 'male' },
      stations: { A: [0, 0], B: [100, 0], C: [200, 0], D: [300, 0] },
      lines: { dovetail: ['A', 'B', 'C', 'D'] },
      sweeps: [
        {
          id: 'over pins',
          offset: 'known',
          slope: 'known',
          sigma: 0.001,
          readings: sizes.map((size, k) => ['ABCD'[k]!, size]),
        },
      ],
    }),
  );
  expect(result.figures.parallelism!.value).toBeCloseTo(12, 6);
  expect(result.figures.parallelism!.u).toBeCloseTo(Math.SQRT2, 9);
  // slope Σ(x − 150)(M − M̄)/Σ(x − 150)² = 0.042 µm/mm, over 300 mm
  expect(result.figures.taper!.value).toBeCloseTo(12.6, 6);
  expect(result.notes.join(' ')).toContain('which flank');
  expect(result.notes.join(' ')).toContain('27.3205 mm');
});
