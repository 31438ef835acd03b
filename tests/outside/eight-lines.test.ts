import { describe, expect, test } from 'vitest';
import {
  type EightLineName,
  type EightLineWalks,
  eachLine,
  eightLinePlate,
} from '../../shared/figures/eight-lines.ts';
import { reduce } from '../../shared/reduce.ts';
import { validateSheet } from '../../shared/sheet/sheet.ts';
import { expectClose } from '../tools/expect-close.ts';
import { readingsOf, unionJack, unionJackLines, unionJackSheet } from '../tools/union-jack.ts';

// Method: J. C. Moody, "How to Calibrate Surface Plates in the Plant", The Tool Engineer, October 1955;
// columns from memory, they agree with published descriptions. Numbers: constructed, every column computed by
// an independent script; the heights of the joint adjustment by dense least squares.

const walks = (perturbed: boolean): EightLineWalks =>
  eachLine((name) => {
    const line = unionJackLines.find((one) => one.name === name)!;
    return { stepMm: line.stepMm, readingsUmPerM: readingsOf(line, perturbed) };
  });

const byHand: Record<EightLineName, { exact: number[]; perturbed: number[] }> = {
  firstDiagonal: { exact: [-6.5, -3.75, 0, -1.25, -6.5], perturbed: [-7, -4.25, 0, -1.25, -7] },
  secondDiagonal: { exact: [-4.5, -3.25, 0, -3.75, -4.5], perturbed: [-4.75, -3.125, 0, -3.875, -4.75] },
  south: { exact: [-6.5, -7.75, -9, -7.25, -4.5], perturbed: [-7, -8.3125, -9.625, -7.4375, -4.75] },
  north: { exact: [-4.5, -5.75, -7, -5.25, -6.5], perturbed: [-4.75, -5.9375, -7.625, -5.8125, -7] },
  west: { exact: [-6.5, -6.5, -9.5, -7.5, -4.5], perturbed: [-7, -6.9375, -9.875, -7.8125, -4.75] },
  east: { exact: [-4.5, -4.5, -4.5, -5.5, -6.5], perturbed: [-4.75, -4.9625, -4.575, -5.7875, -7] },
  centreAlong: { exact: [-9.5, -3.75, 0, -0.25, -4.5], perturbed: [-9.875, -3.8, -0.225, -0.65, -4.575] },
  centreAcross: { exact: [-9, -2, 0, -1, -7], perturbed: [-9.625, -2.475, -0.325, -1.775, -7.625] },
};

describe('eight lines by hand columns', () => {
  test.each(Object.entries(byHand))('%s', (name, heights) => {
    const line = name as EightLineName;
    expectClose(eightLinePlate(walks(false)).lines[line].heightsUm, heights.exact, 9);
    expectClose(eightLinePlate(walks(true)).lines[line].heightsUm, heights.perturbed, 9);
  });

  test('exact readings close; flatness over the hand plane', () => {
    const plate = eightLinePlate(walks(false));
    expect(plate.closuresUm.centreAlong).toBeCloseTo(0, 9);
    expect(plate.closuresUm.centreAcross).toBeCloseTo(0, 9);
    expect(plate.flatnessUm).toBeCloseTo(9.5, 9);
  });

  test('readings that disagree show as closures, which are spread along the centre lines', () => {
    const plate = eightLinePlate(walks(true));
    expect(plate.closuresUm.centreAlong).toBeCloseTo(-0.225, 9);
    expect(plate.closuresUm.centreAcross).toBeCloseTo(-0.325, 9);
    expectClose(plate.spreadUm.centreAlong, [-9.875, -3.6875, 0, -0.5375, -4.575], 9);
    expectClose(plate.spreadUm.centreAcross, [-9.625, -2.3125, 0, -1.6125, -7.625], 9);
  });
});

const reduced = (perturbed: boolean, zero: 'free' | 'common' | 'known') =>
  reduce(validateSheet(unionJackSheet(perturbed, zero)));
const heightsOf = (result: ReturnType<typeof reduced>) =>
  Object.values(result.stations).map(({ heightUm }) => heightUm);
const squaredResiduals = (result: ReturnType<typeof reduced>) =>
  result.readings.reduce((sum, { residual }) => sum + residual * residual, 0);

describe('the same readings adjusted jointly', () => {
  test.each(['free', 'common', 'known'] as const)('exact readings, zeros %s: the true plate', (zero) => {
    const result = reduced(false, zero);
    expect(squaredResiduals(result)).toBeCloseTo(0, 9);
    expect(result.figures['flatness.leastSquares']!.value).toBeCloseTo(8.48, 9);
    expect(result.figures['flatness.minimumZone']!.value).toBeCloseTo(8.3333333, 6);
    const plane = unionJack.trueHeightsUm.map(
      (h, k) => h - (-0.0024 * 100 * (k % 5) - (0.0296 / 3) * 75 * Math.floor(k / 5) + 3.12),
    );
    expectClose(heightsOf(result), plane, 9);
  });

  test('each line with a tilt of its own', () => {
    const result = reduced(true, 'free');
    expect(result.fit.degreesOfFreedom).toBe(2);
    expect(squaredResiduals(result)).toBeCloseTo(6.168859, 6);
    expect(result.fit.s0).toBeCloseTo(1.756254, 6);
    expectClose(
      heightsOf(result),
      [
        -0.24225, -2.04602, -3.84979, -2.23102, -0.11225, -0.43766, 1.63255, 3.07878, 1.69755, -0.58266,
        -3.63307, 1.93714, 5.00735, 4.02714, -0.45307, -1.84266, 1.47755, 3.24878, 3.04255, -1.93766, 0.94775,
        -0.73102, -2.90979, -1.66602, -3.42225,
      ],
      5,
    );
    expect(result.figures['flatness.leastSquares']!.value).toBeCloseTo(8.857137, 6);
    expect(result.figures['flatness.minimumZone']!.value).toBeCloseTo(8.64238, 6);
  });

  test('gravity as the reference of all lines, the zero of the level known', () => {
    const result = reduced(true, 'known');
    expect(squaredResiduals(result)).toBeCloseTo(55.226399, 6);
    expect(result.fit.s0).toBeCloseTo(2.627413, 6);
    expect(result.fit.degreesOfFreedom).toBe(8);
    expectClose(
      heightsOf(result),
      [
        -0.1732, -1.9556, -3.73801, -2.27253, -0.30705, -0.42576, 1.66708, 3.13467, 1.60015, -0.65743,
        -3.67832, 1.91451, 5.00735, 4.04977, -0.40781, -1.87435, 1.46848, 3.19289, 3.1145, -1.84308, 0.92962,
        -0.79598, -3.02157, -1.64996, -3.27836,
      ],
      5,
    );
    expect(result.figures['flatness.leastSquares']!.value).toBeCloseTo(8.745357, 6);
    expect(result.figures['flatness.minimumZone']!.value).toBeCloseTo(8.572242, 6);
  });

  test('the hand columns are told beside it', () => {
    const told = reduced(true, 'known').notes.find((note) => note.startsWith('By hand columns'));
    expect(told).toContain('the centre line along closes 0.2 µm LOW, the one across closes 0.3 µm LOW');
  });
});
