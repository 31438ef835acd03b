/** General limits by formula. Each names its source; none is a drawing's tolerance. */

export type PlateGrade = 'AA' | 'A' | 'B';
export type Din876Grade = '0' | 'I' | 'II' | 'III';
export type Iso8512Grade = '0' | '1' | '2' | '3';

/** A grade and the flatness that it allows, µm, from the finest to the coarsest. */
export interface GradeLimit<Grade extends string> {
  readonly grade: Grade;
  readonly limitUm: number;
}

const UM_PER_MICROINCH = 0.0254;
const MM_PER_INCH = 25.4;

/**
 * Flatness of granite surface plates, GGG-P-463c and ASME B89.3.7: 40 + D²/25 microinch for grade AA, D the
 * diagonal (or diameter) in inches; twice that for A, four times for B. `diagonalMm` is that of the
 * work area: with the whole plate's diagonal the limit is wider, so say which was used.
 * Printed tables round to 25 or 50 microinch and so differ by up to 13 %.
 */
export function plateGrades(diagonalMm: number): GradeLimit<PlateGrade>[] {
  const aa = (40 + (diagonalMm / MM_PER_INCH) ** 2 / 25) * UM_PER_MICROINCH;
  return [
    { grade: 'AA', limitUm: aa },
    { grade: 'A', limitUm: 2 * aa },
    { grade: 'B', limitUm: 4 * aa },
  ];
}

/** Flatness by DIN 876: grade 0: 4 + L/250, I: 10 + L/100, II: 20 + L/50, III: 40 + L/25 µm; L the longest side, mm. */
export function din876Grades(longestSideMm: number): GradeLimit<Din876Grade>[] {
  return [
    { grade: '0', limitUm: 4 + longestSideMm / 250 },
    { grade: 'I', limitUm: 10 + longestSideMm / 100 },
    { grade: 'II', limitUm: 20 + longestSideMm / 50 },
    { grade: 'III', limitUm: 40 + longestSideMm / 25 },
  ];
}

/**
 * Flatness by ISO 8512: c1·l + c2, l the diagonal rounded up to 100 mm; c1, c2 = 0.003, 2.5 for grade 0,
 * doubled from grade to grade. From memory, unchecked.
 */
export function iso8512Grades(diagonalMm: number): GradeLimit<Iso8512Grade>[] {
  const rounded = 100 * Math.ceil(diagonalMm / 100 - 1e-9);
  const finest = 0.003 * rounded + 2.5;
  return (['0', '1', '2', '3'] as const).map((grade, i) => ({ grade, limitUm: finest * 2 ** i }));
}

/** The finest grade that the figure certainly meets (F + U within the limit), or undefined for none. */
export function gradeMet<Grade extends string>(
  grades: readonly GradeLimit<Grade>[],
  flatnessUm: number,
  U: number,
): GradeLimit<Grade> | undefined {
  return grades.find(({ limitUm }) => flatnessUm + U <= limitUm);
}
