import { describe, expect, test } from 'vitest';
import { din876Grades, gradeMet, iso8512Grades, plateGrades } from '../../shared/limits.ts';
import { judge, judgeOneSided } from '../../shared/verdicts.ts';
import { expectClose } from '../tools/expect-close.ts';

const UM_PER_MICROINCH = 0.0254;
const diagonalMm = (width: number, length: number) => 25.4 * Math.hypot(width, length);

// Formula AA = 40 + D²/25 microinch: GGG-P-463c, kept in ASME B89.3.7-2013 (three grades, A twice, B four times).
describe('granite plates by GGG-P-463c / ASME B89.3.7', () => {
  test.each([
    [12, 12, 51.52, 1.309, 103.0, 206.1],
    [12, 18, 58.72, 1.491, 117.4, 234.9],
    [18, 24, 76.0, 1.93, 152.0, 304.0],
    [24, 36, 114.88, 2.918, 229.8, 459.5],
    [36, 48, 184.0, 4.674, 368.0, 736.0],
    [48, 72, 339.52, 8.624, 679.0, 1358.1],
    [48, 96, 500.8, 12.72, 1001.6, 2003.2],
  ])('%d × %d in', (width, length, aaMicroinch, aaUm, a, b) => {
    const limits = plateGrades(diagonalMm(width, length)).map(({ limitUm }) => limitUm);
    expect(limits[0]! / UM_PER_MICROINCH).toBeCloseTo(aaMicroinch, 2);
    expect(limits[0]!).toBeCloseTo(aaUm, 3);
    expect(limits[1]! / UM_PER_MICROINCH).toBeCloseTo(a, 0);
    expect(limits[2]! / UM_PER_MICROINCH).toBeCloseTo(b, 0);
  });

  // Table printed on a calibration laboratory's page (dlmcal.com): rounded to 25 or 50 microinch, up to 13 % off.
  test.each([
    [12, 12, 50],
    [12, 18, 50],
    [18, 24, 75],
    [24, 36, 100],
    [36, 48, 200],
    [48, 72, 350],
    [48, 96, 500],
  ])('%d × %d in: the printed table is within 15 %% of the formula', (width, length, printed) => {
    const aa = plateGrades(diagonalMm(width, length))[0]!.limitUm / UM_PER_MICROINCH;
    expect(Math.abs(printed / aa - 1)).toBeLessThan(0.15);
  });

  // SAND2008-2571C gives 1 + 1.6e-6·D² µm, D in mm: a rounded conversion, up to 2 % off.
  test('the published metric form is within 2 % of the exact conversion', () => {
    for (const d of [431, 762, 1099, 1524, 2198, 2726]) {
      const exact = plateGrades(d)[0]!.limitUm;
      expect(exact).toBeCloseTo(1.016 + 1.5748e-6 * d * d, 3);
      expect(Math.abs((1 + 1.6e-6 * d * d) / exact - 1)).toBeLessThan(0.02);
    }
  });

  // Common practice, no source: a 3 ft × 6 ft plate of the middle grade varies by less than 0.0005 in.
  test('3 ft × 6 ft: half a thousandth lies inside A and outside AA', () => {
    const [aa, a] = plateGrades(diagonalMm(36, 72));
    expect(aa!.limitUm / UM_PER_MICROINCH).toBeCloseTo(299.2, 1);
    expect(12.7).toBeGreaterThan(aa!.limitUm);
    expect(12.7).toBeLessThan(a!.limitUm);
    expect(gradeMet(plateGrades(diagonalMm(36, 72)), 12.7, 1)?.grade).toBe('A');
    expect(gradeMet(plateGrades(diagonalMm(36, 72)), 40, 1)).toBeUndefined();
  });
});

// DIN 876 as tabulated by two makers of cast-iron plates (cfm-itbona, jgmtcasting). Another page
// (graphdatum.com/?p=7571) lists 7/15/30 µm for 300 × 300 as "DIN 876": that does not follow the formula.
describe('plates by DIN 876', () => {
  const lengths = [200, 300, 500, 800, 1000, 1200, 1500, 2000, 2500, 3000, 6500];
  test.each([
    ['0', [4.8, 5.2, 6, 7.2, 8, 8.8, 10, 12, 14, 16, 30]],
    ['I', [12, 13, 15, 18, 20, 22, 25, 30, 35, 40, 75]],
    ['II', [24, 26, 30, 36, 40, 44, 50, 60, 70, 80, 150]],
    ['III', [48, 52, 60, 72, 80, 88, 100, 120, 140, 160, 300]],
  ] as const)('grade %s', (grade, expected) => {
    expectClose(
      lengths.map((length) => din876Grades(length).find((limit) => limit.grade === grade)!.limitUm),
      [...expected],
      9,
    );
  });
});

// ISO 8512: coefficients from memory, unchecked; computed from them.
test.each([
  [500, [4, 8, 16, 32]],
  [1000, [5.5, 11, 22, 44]],
  [1500, [7, 14, 28, 56]],
  [2000, [8.5, 17, 34, 68]],
  [2950, [11.5, 23, 46, 92]],
])('plates by ISO 8512 (from memory, unchecked), diagonal %d mm', (diagonal, expected) => {
  expectClose(
    iso8512Grades(diagonal).map(({ limitUm }) => limitUm),
    expected,
    9,
  );
});

// Constructed from the rule of ISO 14253-1: tolerance 10 to either side, U = 2.
describe('decision rule of ISO 14253-1', () => {
  test.each([
    [7.9, 'within'],
    [8, 'within'],
    [9, 'cannot tell'],
    [12, 'cannot tell'],
    [12.1, 'outside'],
    [-8, 'within'],
    [-12.1, 'outside'],
  ] as const)('%d is %s', (value, verdict) => {
    expect(judge(value, 1, 10).verdict).toBe(verdict);
  });

  // One-sided: only an excess counts, a value far below the limit is well within.
  test.each([
    [7.9, 'within'],
    [8, 'within'],
    [9, 'cannot tell'],
    [12, 'cannot tell'],
    [12.1, 'outside'],
    [-8, 'within'],
    [-12.1, 'within'],
  ] as const)('%d is %s of a one-sided limit', (value, verdict) => {
    expect(judgeOneSided(value, 1, 10).verdict).toBe(verdict);
  });
});
