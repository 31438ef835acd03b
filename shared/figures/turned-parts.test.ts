import { expect, test } from 'vitest';
import { reduce } from '../reduce.ts';
import { validateSheet } from '../sheet/sheet.ts';

const collars = (sizes: readonly (readonly [string, number])[]) =>
  reduce(
    validateSheet({
      sheet: 1,
      kind: 'collars',
      units: { height: 'mm' },
      stations: { K0: [0, 0], K1: [150, 0] },
      lines: { collars: ['K0', 'K1'] },
      sweeps: [{ id: 'diameters', sigma: 0.001, readings: [...sizes.map(([at, size]) => [at, size])] }],
    }),
  ).figures;

test('two collars: the taper in diameter, and half of it as the slope of the axis (constructed)', () => {
  // 40.010 less 40.000 mm over 150 mm: 10 µm bigger, the axis runs off by 5 µm over 150 mm.
  const figures = collars([
    ['K0', 40],
    ['K1', 40.01],
  ]);
  expect(figures.taper!.value).toBeCloseTo(10, 9);
  expect(figures.taper!.u).toBeCloseTo(Math.SQRT2, 9);
  expect(figures.axisSlope!.value).toBeCloseTo(5 / 0.15, 9);
  expect(figures.axisSlope!.u).toBeCloseTo(Math.SQRT2 / 2 / 0.15, 9);
});

const face = (middle: number, tilt = 0) =>
  reduce(
    validateSheet({
      sheet: 1,
      kind: 'face',
      stations: { C0: [0, 0], C1: [150, 0], C2: [300, 0] },
      lines: { face: ['C0', 'C1', 'C2'] },
      sweeps: [
        {
          id: 'across',
          sense: -1,
          sigma: 1,
          readings: [
            ['C0', 500],
            ['C1', 500 + middle + tilt],
            ['C2', 500 + 2 * tilt],
          ],
        },
      ],
      limits: [{ figure: 'hollow', max: 10 }],
    }),
  );

test('a face: hollow in the middle whatever the straightedge lies on, and the cone that the cross slide turned', () => {
  for (const tilt of [0, 37]) {
    const { figures, verdicts } = face(18, tilt);
    expect(figures.hollow!.value).toBeCloseTo(18, 9);
    expect(figures.hollow!.u).toBeCloseTo(Math.sqrt(1.5), 9);
    expect(figures.crossSlideSquareness!.value).toBeCloseTo(18 / 0.15, 9);
    expect(verdicts[0]!.verdict).toBe('outside');
  }
  expect(face(-4).figures.hollow!.value).toBeCloseTo(-4, 9);
});
